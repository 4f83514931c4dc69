/** Why a report cannot be sent as it stands, in words; null where it can. */
import type { MyGauge } from '@gaugewright/contract'
import { type EpochDay, formatAmount, isoFromEpochDay, type Language, type Unit } from '@gaugewright/science'
import { fill } from '../../words/fill.ts'
import type { MyWords } from '../../words/myWords.ts'
import { placeUm, tubeOf } from './amountText.ts'
import type { Known } from './entryDays.ts'
import { sayDay } from './sayTime.ts'

export type EntryKind = 'nothing' | 'trace' | 'amount'

export interface FormState {
  kind: EntryKind | null
  fills: readonly number[]
  places: number
  unit: Unit
  language: Language
  words: MyWords
  /** What the day holds already. */
  taken: Known | undefined
  day: EpochDay
  gauge: MyGauge
  isFuture: boolean
}

const umPerFifthMm = 200

export function formTrouble(form: FormState): string | null {
  const { kind, fills, places, unit, language, words, taken, day, gauge, isFuture } = form
  const { report } = words
  const say = (amountUm: number) => formatAmount({ amountUm, isTrace: false }, unit, language, 'full')
  if (isFuture) return report.future
  if (taken !== undefined) {
    return fill(report.hasReading, { day: sayDay(isoFromEpochDay(day), language), amount: taken.text })
  }
  if (kind !== 'amount') return null
  const { tubeUm, capacityUm } = tubeOf[unit]
  const allUm = [...fills, places].map((one) => one * placeUm[unit])
  const sumUm = allUm.reduce((a, b) => a + b, 0)
  if (sumUm === 0) return report.keypadHow
  if (sumUm > capacityUm) return fill(report.tooMuch, { amount: say(capacityUm) })
  if (fills.length > 0 && allUm.some((one) => one > tubeUm)) return fill(report.fillTooMuch, { amount: say(tubeUm) })
  const stepUm = gauge.gauge.resolutionUm
  if (unit === 'mm' && stepUm === umPerFifthMm && allUm.some((one) => one % stepUm !== 0)) {
    return fill(report.finer, { step: say(stepUm) })
  }
  return null
}
