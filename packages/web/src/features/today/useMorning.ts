import type { DayReview, DecideAsk, WireDecision } from '@gaugewright/contract'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import type { KeyAct } from './keys.ts'
import { mapMeasures } from './mapAsk.ts'
import { bestGuess, docketParts, lastDecision, nextToDecide, stepIn } from './todayView.ts'
import { useChosen } from './useChosen.ts'
import type { useDay } from './useDay.ts'
import { useReading } from './useReading.ts'
import { type Panel, useShown } from './useShown.ts'
import { useTodayKeys } from './useTodayKeys.ts'
import { actsFor, type WhatIfAct } from './whatIfAsk.ts'

export type MorningAsk = {
  day: ReturnType<typeof useDay>
  review: DayReview
  gaugeId: string | null
  onDay: (day: string) => void
  onGauge: (gaugeId: string) => void
}
export type Morning = ReturnType<typeof useMorning>

/** The morning at hand: the chosen reading, the acts on it, and the keys that call them. */
export function useMorning({ day, review, gaugeId, onDay, onGauge }: MorningAsk) {
  const { words } = useWords()
  const shown = useShown()
  const chosen = useChosen(review, gaugeId)
  const readingId = chosen?.readingId ?? null
  const next = readingId === null ? null : nextToDecide(review, readingId)
  const reading = useReading({
    day: review.day,
    readingId,
    nextReadingId: next?.readingId ?? null,
    act: shown.weighed?.readingId === readingId ? shown.weighed.act : null,
  })
  const { evidence, evidenceError, whatIf } = reading
  const measure = shown.measure === 'change' && !whatIf ? 'amount' : shown.measure
  const undoable = lastDecision(review)

  const choose = (to: string, panel: Panel | null = 'evidence') => {
    onGauge(to)
    shown.setReason('')
    if (panel) shown.setPanel(panel)
  }
  const reasonFor = (): string => {
    if (shown.reason.trim() || !chosen?.docketRow) return shown.reason.trim()
    const { kind, odds } = bestGuess(chosen.docketRow)
    return fill(words.reasonAuto, { explanation: words.explanations[kind], odds: odds.toFixed(2) })
  }
  const decide = (verdict: DecideAsk['verdict'], amended: DecideAsk['amended'] = null) => {
    if (readingId === null || !chosen?.row) return
    // Asking needs the message, which comes with the evidence.
    if (verdict === 'asked' && !evidence && !evidenceError) return
    const ask: DecideAsk = { readingId, verdict, amended, reason: reasonFor(), by: 'coordinator' }
    const { amountUm, isTrace } = chosen.docketRow ?? chosen.row
    const reported = { amountUm: amountUm ?? 0, isTrace }
    day.decide({ ask, day: review.day, gauge: chosen.row.name, reported })
    shown.setReason('')
    shown.setDialog(null)
    const nextGaugeId = shown.list === 'docket' ? (next?.gaugeId ?? null) : null
    if (verdict === 'asked' && evidence) {
      onGauge(chosen.gaugeId)
      shown.setLetter({ text: evidence.message, observerName: evidence.observerName, nextGaugeId })
    } else onGauge(nextGaugeId ?? chosen.gaugeId)
  }
  const openAmend = () => {
    if (evidence) shown.setDialog('amend')
  }
  const amendNow = () => {
    if (!evidence?.proposal || evidence.suggested !== 'amend') return openAmend()
    const { amountUm, isTrace, firstDay, lastDay } = evidence.proposal
    decide('amended', { amountUm, isTrace, firstDay, lastDay })
  }
  const undo = () => {
    if (!undoable) return
    const row = review.roll.find((r) => r.readingId === undoable.readingId)
    const docketRow = review.docket.find((r) => r.readingId === undoable.readingId)
    const gauge = row?.name ?? docketRow?.name ?? ''
    day.undo({ readingId: undoable.readingId, day: review.day, gauge }, undoable)
    if (row) onGauge(row.gaugeId)
  }
  /** Takes back what a rule decided about the chosen reading. */
  const takeBack = (decision: WireDecision) => {
    if (!chosen?.row) return
    day.undo({ readingId: decision.readingId, day: review.day, gauge: chosen.row.name }, decision)
  }
  const step = (by: 1 | -1) => {
    const { toDecide, asked, decided } = docketParts(review)
    const inDocket = () => [...toDecide, ...asked, ...decided].map((row) => row.gaugeId)
    const order = shown.list === 'roll' ? shown.rollOrder.current : inDocket()
    const to = stepIn(order, (id) => id === chosen?.gaugeId, by)
    if (to !== null) choose(to, null)
  }
  const weigh = (act: WhatIfAct) => {
    if (readingId !== null) shown.setWeighed({ readingId, act })
  }
  const weighNext = () => {
    if (!evidence || reading.act === null) return
    const open = actsFor(evidence)
    weigh(open[(open.indexOf(reading.act) + 1) % open.length]!)
  }
  const showWhatIf = (isShown: boolean) => {
    shown.setMeasure(isShown ? 'change' : 'amount')
    if (isShown) shown.setPanel('map')
  }
  const nextMeasure = () => {
    const open = mapMeasures.filter((m) => m !== 'change' || whatIf)
    shown.setMeasure(open[(open.indexOf(measure) + 1) % open.length]!)
  }
  const closeLetter = () => {
    if (shown.letter?.nextGaugeId) onGauge(shown.letter.nextGaugeId)
    shown.setLetter(null)
  }
  const acts: Record<KeyAct, () => void> = {
    stands: () => decide('stands'),
    amend: openAmend,
    amendNow,
    ask: () => decide('asked'),
    setAside: () => decide('set aside'),
    undo,
    reason: () => shown.reasonRef.current?.focus(),
    next: () => step(1),
    previous: () => step(-1),
    previousDay: () => review.previousDay && onDay(review.previousDay),
    nextDay: () => review.nextDay && onDay(review.nextDay),
    latestDay: () => onDay(review.lastDay),
    search: () => {
      shown.showList('roll')
      requestAnimationFrame(() => shown.searchRef.current?.focus())
    },
    list: () => shown.showList(shown.list === 'docket' ? 'roll' : 'docket'),
    measure: nextMeasure,
    isohyets: () => shown.setIsohyets(!shown.isohyets),
    whatIf: () => showWhatIf(measure !== 'change'),
    whatIfNext: weighNext,
    focusMap: () => {
      shown.setPanel('map')
      requestAnimationFrame(() => document.getElementById('map-surface')?.focus())
    },
    help: () => shown.setDialog('keys'),
    close: () => {
      day.clearEffect()
      if (document.activeElement instanceof HTMLElement) document.activeElement.blur()
    },
  }
  useTodayKeys(shown.singleKeysOn, (act) => acts[act]())
  return {
    ...reading,
    shown,
    chosen,
    readingId,
    measure,
    canUndo: undoable !== null,
    choose,
    decide,
    takeBack,
    acts,
    weigh,
    showWhatIf,
    closeLetter,
  }
}
