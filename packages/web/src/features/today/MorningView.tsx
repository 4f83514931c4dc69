import type { DayReview } from '@gaugewright/contract'
import { problemFrom } from '../../api/problemError.ts'
import { Notice } from '../../ui/Notice.tsx'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import { AmendDialog } from './AmendDialog.tsx'
import { AskDialog } from './AskDialog.tsx'
import { DayHeader } from './DayHeader.tsx'
import { EffectToast } from './EffectToast.tsx'
import { EvidencePane } from './EvidencePane.tsx'
import { FactsLine } from './FactsLine.tsx'
import { KeysDialog } from './KeysDialog.tsx'
import { ListPane } from './ListPane.tsx'
import { MapPane } from './MapPane.tsx'
import styles from './TodayPage.module.css'
import type { TodayProps } from './todayProps.ts'
import type { useDay } from './useDay.ts'
import { useMorning } from './useMorning.ts'
import type { Panel } from './useShown.ts'

type Props = TodayProps & { day: ReturnType<typeof useDay>; review: DayReview }

/** The whole screen of a day: facts, list, map and evidence; on a narrow screen one of them at a time. */
export function MorningView(props: Props) {
  const { day, review } = props
  const { words } = useWords()
  const morning = useMorning(props)
  const { shown, evidence } = morning
  return (
    <div
      className={styles.page}
      data-panel={shown.panel}
      data-list={shown.list}
      data-day={review.day}
      aria-busy={day.review.isPlaceholderData}
    >
      <a className={styles.skip} href="#docket">
        {words.skipToDocket}
      </a>
      <DayHeader review={review} onDay={props.onDay} onHelp={morning.acts.help} tools={props.tools} />
      <main className={styles.main}>
        <FactsLine
          review={review}
          onDocket={() => shown.showList('docket')}
          onRoll={shown.showRoll}
          onGauge={(gaugeId) => morning.choose(gaugeId)}
        />
        <Trouble day={day} />
        <Tabs
          panel={shown.panel}
          toDecide={review.facts.toDecide}
          onPanel={(to) => (to === 'docket' || to === 'roll' ? shown.showList(to) : shown.setPanel(to))}
        />
        <div className={styles.grid}>
          <ListPane review={review} morning={morning} effect={day.effect} />
          <MapPane review={review} field={day.field} morning={morning} map={props.map} />
          <EvidencePane review={review} morning={morning} />
        </div>
      </main>
      <EffectToast effect={day.effect} onUndo={morning.acts.undo} onClose={day.clearEffect} />
      {shown.dialog === 'amend' && evidence ? (
        <AmendDialog
          evidence={evidence}
          onAmend={(amended) => morning.decide('amended', amended)}
          onClose={() => shown.setDialog(null)}
        />
      ) : null}
      {shown.dialog === 'keys' ? (
        <KeysDialog
          singleKeysOn={shown.singleKeysOn}
          onSingleKeys={shown.setSingleKeysOn}
          onClose={() => shown.setDialog(null)}
        />
      ) : null}
      {shown.letter ? (
        <AskDialog observerName={shown.letter.observerName} message={shown.letter.text} onClose={morning.closeLetter} />
      ) : null}
    </div>
  )
}

/** What the desk refused or could not do, and a way to try again; a decision is kept until then. */
function Trouble({ day }: { day: ReturnType<typeof useDay> }) {
  const { words } = useWords()
  const { failure } = day
  if (!failure && !day.fieldError) return null
  return (
    <div className={styles.notice}>
      {failure ? (
        <Notice
          problem={failure.problem}
          note={fill(words.problemKept, { gauge: failure.gauge })}
          onRetry={failure.retry}
          onDismiss={day.clearFailure}
        />
      ) : (
        <Notice problem={problemFrom(day.fieldError)} />
      )}
    </div>
  )
}

type TabsProps = { panel: Panel; toDecide: number; onPanel: (panel: Panel) => void }

function Tabs({ panel, toDecide, onPanel }: TabsProps) {
  const { words } = useWords()
  const tabs: { value: Panel; label: string }[] = [
    { value: 'docket', label: `${words.docket} ${toDecide}` },
    { value: 'evidence', label: words.evidence },
    { value: 'map', label: words.map },
    { value: 'roll', label: words.roll },
  ]
  return (
    <nav className={styles.tabs} aria-label={words.panels}>
      {tabs.map(({ value, label }) => (
        <button
          key={value}
          type="button"
          aria-current={panel === value ? 'true' : undefined}
          onClick={() => onPanel(value)}
        >
          {label}
        </button>
      ))}
    </nav>
  )
}
