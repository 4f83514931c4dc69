import type { MyGauge, MyReading, NewReading, WireEntryQuestion } from '@gaugewright/contract'
import { decimalMarkOf, epochDayFromIso, isoFromEpochDay, type Language, type Unit } from '@gaugewright/science'
import { useEffect, useMemo, useRef, useState } from 'react'
import { fill } from '../../words/fill.ts'
import type { MyWords } from '../../words/myWords.ts'
import { AskBackDialog } from './AskBackDialog.tsx'
import { placeUm, plainText, reportText, sayAmount, type TypedAmount } from './amountText.ts'
import { askBack } from './askBack.ts'
import { checkEntry } from './checkEntry.ts'
import { daysOf, entryDay, type Known, missedDays, readingOf, readingsOf, type Span } from './entryDays.ts'
import { Fills } from './Fills.tsx'
import { type EntryKind, formTrouble } from './formTrouble.ts'
import { GapChoice } from './GapChoice.tsx'
import { GaugeDrawing } from './GaugeDrawing.tsx'
import { Keypad } from './Keypad.tsx'
import { KindButtons } from './KindButtons.tsx'
import styles from './MyPage.module.css'
import { sayDay } from './sayTime.ts'
import { useNow } from './useNow.ts'
import { WhenFields } from './WhenFields.tsx'

type Props = {
  gauge: MyGauge
  known: readonly Known[]
  unit: Unit
  language: Language
  words: MyWords
  correcting: MyReading | null
  onSend: (readings: NewReading[]) => Promise<void>
  onStop: () => void
}

/** The morning reading: what was in the gauge, when it was read, which days it is for; checked, asked back about, sent. */
export function ReportForm({ gauge, known, unit, language, words, correcting, onSend, onStop }: Props) {
  const { report } = words
  const now = useNow(gauge)
  const [kind, setKind] = useState<EntryKind | null>(null)
  const [places, setPlaces] = useState(0)
  const [fills, setFills] = useState<number[]>([])
  const [readAt, setReadAt] = useState<Date | null>(null)
  const [span, setSpan] = useState<Span>('last')
  const [remark, setRemark] = useState('')
  const [asked, setAsked] = useState<WireEntryQuestion | null>(null)
  const [isBusy, setBusy] = useState(false)
  const [told, setTold] = useState('')
  const heading = useRef<HTMLHeadingElement>(null)
  const days = useMemo(() => daysOf(gauge.network), [gauge.network])
  const time = correcting === null ? (readAt ?? now) : new Date(correcting.endsAtUtc)
  const placed = entryDay(gauge.network, days, time.getTime())
  const day = correcting === null ? placed.day : epochDayFromIso(correcting.lastDay)
  const missed = correcting === null ? missedDays(known, day) : 0
  const spanNow: Span = missed === 0 || (span === 'each' && kind !== 'nothing') ? 'last' : span
  const shownUm = [...fills, places].reduce((sum, one) => sum + one * placeUm[unit], 0)
  const amount: TypedAmount =
    kind === 'amount' ? { amountUm: shownUm, isTrace: false } : { amountUm: 0, isTrace: kind === 'trace' }
  const text = reportText(kind ?? 'nothing', fills, places, unit)
  const taken = correcting === null ? readingOf(known, day) : undefined
  const trouble = formTrouble({ kind, fills, places, unit, language, words, taken, day, gauge, isFuture: time > now })
  // biome-ignore lint/correctness/useExhaustiveDependencies: another reading to correct is another form
  useEffect(() => {
    if (correcting === null) return
    setKind(null)
    setPlaces(0)
    setFills([])
    setTold('')
    heading.current?.focus()
  }, [correcting?.id])

  const sayNow = sayAmount(amount, unit, language, words)
  const firstDay = spanNow === 'total' ? day - missed : day

  async function onPress(): Promise<void> {
    setBusy(true)
    setTold('')
    const ask = {
      gauge: gauge.gauge.code,
      firstDay: correcting?.firstDay ?? isoFromEpochDay(firstDay),
      lastDay: correcting?.lastDay ?? isoFromEpochDay(day),
      text,
      unit,
    }
    const question = await checkEntry(ask, amount, gauge, known)
    setBusy(false)
    if (question === null) await finish(text, unit, null)
    else setAsked(question)
  }

  async function finish(sent: string, sentUnit: Unit, confirmed: NewReading['confirmed']): Promise<void> {
    const corrects = correcting && { id: correcting.id, firstDay: correcting.firstDay, lastDay: correcting.lastDay }
    const entry = { day, missed, span: spanNow, text: sent, unit: sentUnit, remark, confirmed, corrects }
    const readings = readingsOf({ ...entry, readAtUtc: time.toISOString() }, () => crypto.randomUUID())
    try {
      await onSend(readings)
    } catch (error) {
      setTold(fill(report.keptNot, { reason: error instanceof Error ? error.message : String(error) }))
      return
    }
    const oneText = sent === text ? sayNow : `${sent} ${sentUnit}`
    const saidText = readings.length > 1 ? fill(words.reports.dryDays, { count: readings.length }) : oneText
    setTold(fill(report.thanks, { amount: saidText, day: sayDay(isoFromEpochDay(day), language) }))
    setKind(null)
    setPlaces(0)
    setFills([])
    setReadAt(null)
    setSpan('last')
    setRemark('')
    if (correcting !== null) onStop()
  }

  function onAnswer(chosen: TypedAmount): void {
    const about = (asked?.alternatives ?? []).map(({ kind: mistake }) => mistake)
    setAsked(null)
    const isKept = chosen.amountUm === amount.amountUm && chosen.isTrace === amount.isTrace
    const sent = isKept ? text : plainText(Math.round(chosen.amountUm / placeUm[unit]), unit)
    void finish(sent, unit, { about: [...new Set(about)], firstText: text })
  }

  return (
    <section className={styles.card} aria-labelledby="report-heading">
      <h2 id="report-heading" ref={heading} tabIndex={-1}>
        {correcting === null ? report.heading : fill(report.correcting, { day: sayDay(correcting.lastDay, language) })}
      </h2>
      {correcting === null ? null : (
        <div className={styles.row}>
          <p>{fill(report.correctingWas, { amount: sayAmount(correcting, unit, language, words) })}</p>
          <button type="button" className={styles.button} onClick={onStop}>
            {report.stop}
          </button>
        </div>
      )}
      <KindButtons kind={kind} words={words} onKind={setKind} />
      {kind === 'trace' ? (
        <div className={styles.hint} data-testid="dew">
          <strong>{report.dewTitle}</strong>
          <p>{report.dew}</p>
        </div>
      ) : null}
      {kind === 'nothing' ? <p className={styles.hint}>{report.zeroCounts}</p> : null}
      {kind === null ? null : (
        <>
          {kind === 'nothing' ? null : <GaugeDrawing amount={amount} unit={unit} language={language} words={words} />}
          {kind === 'amount' ? (
            <>
              <Keypad places={places} unit={unit} mark={decimalMarkOf(language)} words={words} onPlaces={setPlaces} />
              <Fills
                fills={fills}
                places={places}
                unit={unit}
                language={language}
                words={words}
                onFills={(next, rest) => {
                  setFills(next)
                  setPlaces(rest)
                }}
              />
            </>
          ) : null}
          {correcting === null ? (
            <WhenFields
              readAt={readAt}
              now={now}
              placed={placed}
              language={language}
              words={words}
              onReadAt={setReadAt}
            />
          ) : null}
          {missed > 0 ? (
            <GapChoice
              missed={missed}
              day={day}
              span={spanNow}
              mayBeEach={kind === 'nothing'}
              language={language}
              words={words}
              onSpan={setSpan}
            />
          ) : null}
          <label className={styles.field}>
            <span>{report.remark}</span>
            <textarea
              className={styles.input}
              rows={2}
              maxLength={500}
              placeholder={report.remarkHint}
              value={remark}
              onChange={(change) => setRemark(change.target.value)}
            />
          </label>
          {trouble === null ? null : (
            <p className={styles.trouble} role="status">
              {trouble}
            </p>
          )}
          <button
            type="button"
            className={styles.send}
            disabled={isBusy || trouble !== null}
            onClick={() => void onPress()}
            data-testid="send"
          >
            {isBusy
              ? report.checking
              : spanNow === 'each'
                ? fill(report.sendDays, { count: missed + 1 })
                : fill(report.send, { amount: sayNow })}
          </button>
        </>
      )}
      <p role="status" className={styles.told} data-testid="told">
        {told}
      </p>
      {asked === null ? null : (
        <AskBackDialog
          ask={askBack(amount, asked, unit, language, words)}
          unit={unit}
          language={language}
          words={words}
          onAnswer={onAnswer}
          onBack={() => setAsked(null)}
        />
      )}
    </section>
  )
}
