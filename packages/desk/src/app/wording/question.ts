/**
 * What the observer is asked, before any language. It holds nothing but what the observer typed and what follows from it
 * by arithmetic: there is no field here for a neighbour's amount or for what neighbours made expected.
 */
import type { Explanation, Unit } from '@gaugewright/science'
import { asTyped, type Swap, swapOf } from './mistakenText.ts'
import type { WordingAsk } from './wordingAsk.ts'

export type Question =
  | { kind: 'stands' }
  | { kind: 'decimal'; typedText: string; meantText: string | null; hidesDigits: boolean; unit: Unit }
  | { kind: 'unit'; isConverted: boolean; typedText: string; unit: Unit; otherUnit: Unit }
  /** `text`: the amount in question, as typed for `typedFor`; null where both days are zeros among days dated off. */
  | { kind: 'day'; text: string | null; unit: Unit; typedFor: number; otherDay: number }
  | { kind: 'carried'; isTotal: boolean; endsOn: number }
  | { kind: 'first-fill-lost' }
  | { kind: 'first-fill-only' }
  | { kind: 'false-zero' }
  | { kind: 'wetted'; maySnow: boolean }
  | ({ kind: 'transposed' } & Swap)
  | { kind: 'repeated'; earlierDay: number }
  | { kind: 'other' }

export function questionOf(explanation: Explanation, ask: WordingAsk): Question {
  const { finding, typedText, typedUnit } = ask
  const { detail } = explanation
  switch (explanation.kind) {
    case 'decimal': {
      // Without its detail the amount meant could only come from the neighbours.
      const meant = detail?.kind === 'decimal' ? asTyped(finding.reportedMm / 10 ** detail.places, ask) : null
      const hidesDigits = detail?.kind === 'decimal' && detail.places < 0
      return { kind: 'decimal', typedText, meantText: meant, hidesDigits, unit: typedUnit }
    }
    case 'unit': {
      const isConverted = detail?.kind === 'unit' && detail.measuredIn === typedUnit
      return { kind: 'unit', isConverted, typedText, unit: typedUnit, otherUnit: typedUnit === 'in' ? 'mm' : 'in' }
    }
    case 'day':
      return dayQuestion(explanation, ask)
    case 'carried': {
      const endsOn = detail?.kind === 'carried' ? detail.endsOn : finding.day
      return { kind: 'carried', isTotal: endsOn === finding.day, endsOn }
    }
    case 'wetted':
      return { kind: 'wetted', maySnow: ask.isSnowSeason }
    case 'transposed':
      return { kind: 'transposed', ...swapOf(explanation, ask) }
    case 'repeated':
      return { kind: 'repeated', earlierDay: detail?.kind === 'repeated' ? detail.earlierDay : finding.day - 1 }
    default:
      return { kind: explanation.kind }
  }
}

/** Asks after the amount itself: what was typed here, or for an empty day what the observer typed for the other. */
function dayQuestion({ detail }: Explanation, ask: WordingAsk): Question {
  const { finding, typedText, typedUnit } = ask
  const otherDay = detail?.kind === 'day' ? detail.otherDay : finding.day
  const otherMm = detail?.kind === 'day' ? detail.otherReportedMm : null
  if (finding.reportedMm <= 0 && otherMm !== null && otherMm > 0)
    return { kind: 'day', text: asTyped(otherMm, ask), unit: typedUnit, typedFor: otherDay, otherDay: finding.day }
  return {
    kind: 'day',
    text: finding.reportedMm > 0 ? typedText : null,
    unit: typedUnit,
    typedFor: finding.day,
    otherDay,
  }
}
