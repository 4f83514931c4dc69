import type { DayField, DayReview, DecideAsk, RollRow, WhatIf } from '@gaugewright/contract'
import { type ReactNode, useCallback, useRef, useState } from 'react'
import { problemFrom } from '../../api/problemError.ts'
import { useStored } from '../../hooks/useStored.ts'
import { Choice } from '../../ui/Choice.tsx'
import { Notice } from '../../ui/Notice.tsx'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import { AmendDialog } from './AmendDialog.tsx'
import { AreaStrip } from './AreaStrip.tsx'
import { AskDialog } from './AskDialog.tsx'
import { DayHeader } from './DayHeader.tsx'
import { DecisionBar } from './DecisionBar.tsx'
import { DocketList } from './DocketList.tsx'
import { EffectToast } from './EffectToast.tsx'
import { EvidencePanel } from './EvidencePanel.tsx'
import { FactsLine } from './FactsLine.tsx'
import { KeysDialog } from './KeysDialog.tsx'
import type { KeyAct } from './keys.ts'
import { byWeight, shownNeighbours } from './neighboursView.ts'
import { RollTable } from './RollTable.tsx'
import type { RollFilter } from './rollView.ts'
import styles from './TodayPage.module.css'
import { bestGuess, docketParts, lastDecision, nextToDecide, stepIn } from './todayView.ts'
import { useChosen } from './useChosen.ts'
import { useDay } from './useDay.ts'
import { useReading } from './useReading.ts'
import { useTodayKeys } from './useTodayKeys.ts'

export const mapMeasures = ['amount', 'uncertainty', 'change', 'gauges'] as const
export type MapMeasure = (typeof mapMeasures)[number]

/** What Today wants the map to show; the app puts the map itself in. */
export type MapAsk = {
  day: string
  roll: readonly RollRow[]
  doubtful: ReadonlySet<string>
  field: DayField | null
  change: WhatIf | null
  chosenGaugeId: string | null
  hoveredGaugeId: string | null
  neighbours: readonly { gaugeId: string; weight: number }[]
  measure: MapMeasure
  onMeasure: (measure: MapMeasure) => void
  isohyets: boolean
  onIsohyets: (shown: boolean) => void
  onChoose: (gaugeId: string) => void
}
type Panel = 'docket' | 'map' | 'evidence' | 'roll'

type Props = {
  dayAsked: string
  gaugeId: string | null
  onDay: (day: string) => void
  onGauge: (gaugeId: string) => void
  map: (ask: MapAsk) => ReactNode
  tools: ReactNode
}

export function TodayPage(props: Props) {
  const day = useDay(props.dayAsked)
  const { words } = useWords()
  if (day.review.data) return <Morning {...props} day={day} review={day.review.data} />
  return (
    <main className={styles.waiting}>
      <h1 className="sr-only">{words.today}</h1>
      {day.review.error ? (
        <Notice problem={problemFrom(day.review.error)} onRetry={() => void day.review.refetch()} />
      ) : (
        <p role="status">{words.loading}</p>
      )}
    </main>
  )
}

function Morning(props: Props & { day: ReturnType<typeof useDay>; review: DayReview }) {
  const { day, review, onGauge, onDay } = props
  const { words } = useWords()
  const [panel, setPanel] = useState<Panel>('docket')
  const [list, setList] = useState<'docket' | 'roll'>('docket')
  const [filter, setFilter] = useState<RollFilter>('all')
  const [search, setSearch] = useState('')
  const [measureAsked, setMeasure] = useState<MapMeasure>('amount')
  const [isohyets, setIsohyets] = useState(true)
  const [hoveredGaugeId, setHovered] = useState<string | null>(null)
  const [reason, setReason] = useState('')
  const [dialog, setDialog] = useState<'amend' | 'keys' | null>(null)
  const [message, setMessage] = useState<{ text: string; observer: string | null; next: string | null } | null>(null)
  const [singleKeys, setSingleKeys] = useStored('gaugewright.singleKeys', 'on')
  const reasonRef = useRef<HTMLInputElement>(null)
  const searchRef = useRef<HTMLInputElement>(null)
  const rollOrder = useRef<string[]>([])
  const keepOrder = useCallback((order: string[]) => {
    rollOrder.current = order
  }, [])

  const chosen = useChosen(review, props.gaugeId)
  const readingId = chosen?.readingId ?? null
  const next = readingId === null ? null : nextToDecide(review, readingId)
  const { evidence, evidenceError, whatIf } = useReading(review.day, readingId, next?.readingId ?? null)
  const measure = measureAsked === 'change' && !whatIf ? 'amount' : measureAsked
  const undoable = lastDecision(review)

  const choose = (gaugeId: string, to: Panel | null = 'evidence') => {
    onGauge(gaugeId)
    setReason('')
    if (to) setPanel(to)
  }
  const showList = (which: 'docket' | 'roll') => {
    setList(which)
    setPanel(which)
  }
  const showRoll = (which: RollFilter) => {
    setFilter(which)
    setSearch('')
    showList('roll')
  }
  const decide = (verdict: DecideAsk['verdict'], amended: DecideAsk['amended'] = null) => {
    if (readingId === null || !chosen?.row) return
    const likeliest = chosen.docketRow
    const auto = likeliest
      ? fill(words.reasonAuto, {
          explanation: words.explanations[bestGuess(likeliest).kind],
          odds: bestGuess(likeliest).odds.toFixed(2),
        })
      : ''
    const ask: DecideAsk = { readingId, verdict, amended, reason: reason.trim() || auto, by: 'coordinator' }
    day.decide({ ask, day: review.day, gauge: chosen.row.name })
    setReason('')
    setDialog(null)
    const nextGauge = list === 'docket' ? (next?.gaugeId ?? null) : null
    if (verdict === 'asked' && evidence)
      setMessage({ text: evidence.message, observer: evidence.observerName, next: nextGauge })
    else onGauge(nextGauge ?? chosen.gaugeId)
    if (verdict === 'asked') onGauge(chosen.gaugeId)
  }
  const amendNow = () => {
    const { proposal } = evidence ?? {}
    if (!proposal) return setDialog(evidence ? 'amend' : null)
    const { amountUm, isTrace, firstDay, lastDay } = proposal
    decide('amended', { amountUm, isTrace, firstDay, lastDay })
  }
  const undo = () => {
    if (!undoable) return
    const row = review.roll.find((r) => r.readingId === undoable.readingId)
    const name = row?.name ?? review.docket.find((r) => r.readingId === undoable.readingId)?.name ?? ''
    day.undo({ readingId: undoable.readingId, day: review.day, gauge: name }, undoable)
    if (row) onGauge(row.gaugeId)
  }
  const step = (by: 1 | -1) => {
    const { toDecide, asked, decided } = docketParts(review)
    const order = list === 'roll' ? rollOrder.current : [...toDecide, ...asked, ...decided].map((row) => row.gaugeId)
    const to = stepIn(order, (gaugeId) => gaugeId === chosen?.gaugeId, by)
    if (to !== null) choose(to, null)
  }
  const showWhatIf = (shown: boolean) => {
    setMeasure(shown ? 'change' : 'amount')
    if (shown) setPanel('map')
  }

  const onKey = (act: KeyAct) => {
    switch (act) {
      case 'stands':
        return decide('stands')
      case 'amend':
        return evidence ? setDialog('amend') : undefined
      case 'amendNow':
        return amendNow()
      case 'ask':
        return decide('asked')
      case 'setAside':
        return decide('set aside')
      case 'undo':
        return undo()
      case 'reason':
        return reasonRef.current?.focus()
      case 'next':
        return step(1)
      case 'previous':
        return step(-1)
      case 'previousDay':
        return review.previousDay ? onDay(review.previousDay) : undefined
      case 'nextDay':
        return review.nextDay ? onDay(review.nextDay) : undefined
      case 'latestDay':
        return onDay(review.lastDay)
      case 'search':
        showList('roll')
        requestAnimationFrame(() => searchRef.current?.focus())
        return
      case 'list':
        return showList(list === 'docket' ? 'roll' : 'docket')
      case 'measure': {
        const open = mapMeasures.filter((m) => m !== 'change' || whatIf)
        return setMeasure(open[(open.indexOf(measure) + 1) % open.length]!)
      }
      case 'isohyets':
        return setIsohyets((shown) => !shown)
      case 'whatIf':
        return showWhatIf(measure !== 'change')
      case 'focusMap':
        setPanel('map')
        requestAnimationFrame(() => document.getElementById('map-surface')?.focus())
        return
      case 'help':
        return setDialog('keys')
      case 'close':
        day.clearEffect()
        return document.activeElement instanceof HTMLElement ? document.activeElement.blur() : undefined
    }
  }
  useTodayKeys(singleKeys === 'on', onKey)

  const doubtful = new Set(review.docket.filter((row) => !row.decision).map((row) => row.readingId))
  const problem = day.failure ?? (day.fieldError ? { problem: problemFrom(day.fieldError) } : null)
  const tabs: { value: Panel; label: string }[] = [
    { value: 'docket', label: `${words.docket} ${review.facts.toDecide}` },
    { value: 'evidence', label: words.evidence },
    { value: 'map', label: words.map },
    { value: 'roll', label: words.roll },
  ]
  return (
    <div
      className={styles.page}
      data-panel={panel}
      data-list={list}
      data-day={review.day}
      aria-busy={day.review.isPlaceholderData}
    >
      <a className={styles.skip} href="#docket">
        {words.skipToDocket}
      </a>
      <DayHeader review={review} onDay={onDay} onHelp={() => setDialog('keys')} tools={props.tools} />
      <main className={styles.main}>
        <FactsLine review={review} onDocket={() => showList('docket')} onRoll={showRoll} onGauge={(id) => choose(id)} />
        {problem ? (
          <div className={styles.notice}>
            <Notice
              problem={problem.problem}
              {...(day.failure
                ? {
                    note: fill(words.problemKept, { gauge: day.failure.gauge }),
                    onRetry: day.failure.retry,
                    onDismiss: day.clearFailure,
                  }
                : {})}
            />
          </div>
        ) : null}
        <nav className={styles.tabs} aria-label={words.panels}>
          {tabs.map(({ value, label }) => (
            <button
              key={value}
              type="button"
              aria-current={panel === value ? 'true' : undefined}
              onClick={() => (value === 'docket' || value === 'roll' ? showList(value) : setPanel(value))}
            >
              {label}
            </button>
          ))}
        </nav>
        <div className={styles.grid}>
          <section id="docket" className={styles.list} aria-labelledby="list-heading" tabIndex={-1}>
            <h2 id="list-heading" className="sr-only">
              {list === 'docket' ? words.docket : words.roll}
            </h2>
            <div className={styles.listHead}>
              <Choice
                label={words.panels}
                labelHidden
                value={list}
                options={[
                  { value: 'docket', label: `${words.docket} ${review.facts.toDecide}` },
                  { value: 'roll', label: `${words.roll} ${review.facts.expected}` },
                ]}
                onChange={showList}
              />
            </div>
            <div className={styles.scroll}>
              {list === 'docket' ? (
                <DocketList review={review} chosenId={readingId} onChoose={(id) => choose(id)} />
              ) : (
                <RollTable
                  roll={review.roll}
                  day={review.day}
                  filter={filter}
                  onFilter={setFilter}
                  search={search}
                  onSearch={setSearch}
                  searchRef={searchRef}
                  chosenGaugeId={chosen?.gaugeId ?? null}
                  onChoose={(id) => choose(id)}
                  onOrder={keepOrder}
                />
              )}
            </div>
          </section>
          <section className={styles.map} aria-labelledby="map-heading">
            <h2 id="map-heading" className="sr-only">
              {words.map}
            </h2>
            {props.map({
              day: review.day,
              roll: review.roll,
              doubtful,
              field: day.field,
              change: whatIf,
              chosenGaugeId: chosen?.gaugeId ?? null,
              hoveredGaugeId,
              neighbours: evidence ? byWeight(evidence.neighbours).slice(0, shownNeighbours) : [],
              measure,
              onMeasure: setMeasure,
              isohyets,
              onIsohyets: setIsohyets,
              onChoose: (id) => choose(id, null),
            })}
            <AreaStrip
              areas={day.field?.areas ?? review.areas}
              after={measure === 'change' ? (whatIf?.after.areas ?? null) : null}
            />
          </section>
          <section className={styles.evidence} aria-labelledby="evidence-heading">
            <h2 id="evidence-heading" className="sr-only">
              {words.evidence}
            </h2>
            {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolling region must be reachable by keyboard */}
            <section className={styles.scroll} tabIndex={0} aria-label={chosen?.row?.name ?? words.evidenceNone}>
              <EvidencePanel
                review={review}
                chosen={chosen}
                evidence={evidence}
                evidenceProblem={evidenceError ? problemFrom(evidenceError) : null}
                whatIf={whatIf}
                isWhatIfShown={measure === 'change'}
                onWhatIf={showWhatIf}
                onHover={setHovered}
                onChoose={(id) => choose(id)}
              />
            </section>
            {readingId === null ? null : (
              <DecisionBar
                proposal={evidence?.proposal ?? null}
                reason={reason}
                onReason={setReason}
                reasonRef={reasonRef}
                canUndo={undoable !== null}
                onStands={() => decide('stands')}
                onAmend={() => evidence && setDialog('amend')}
                onAsk={() => decide('asked')}
                onSetAside={() => decide('set aside')}
                onUndo={undo}
              />
            )}
          </section>
        </div>
      </main>
      <EffectToast effect={day.effect} onUndo={undo} onClose={day.clearEffect} />
      {dialog === 'amend' && evidence ? (
        <AmendDialog
          evidence={evidence}
          onAmend={(amended) => decide('amended', amended)}
          onClose={() => setDialog(null)}
        />
      ) : null}
      {dialog === 'keys' ? (
        <KeysDialog
          singleKeysOn={singleKeys === 'on'}
          onSingleKeys={(on) => setSingleKeys(on ? 'on' : 'off')}
          onClose={() => setDialog(null)}
        />
      ) : null}
      {message ? (
        <AskDialog
          observerName={message.observer}
          message={message.text}
          onClose={() => {
            setMessage(null)
            if (message.next) onGauge(message.next)
          }}
        />
      ) : null}
    </div>
  )
}
