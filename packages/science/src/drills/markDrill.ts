/**
 * Marks an answer, and says of a wrong one how it came about: what an observer who makes that slip would have typed. The
 * reasons that have a counterpart among the mistakes of the review name it.
 */
import type { Mistake } from '../mistakes/mistake.ts'
import { parseAmount } from '../reading/parseAmount.ts'
import type { Drill, GaugeDrill, HailDrill } from './drill.ts'
import { apparentUm } from './makeDrill.ts'

export const drillReasons = [
  'unreadable',
  'missing',
  'top of curve',
  'decimal',
  'not at eye level',
  'first fill forgotten',
  'first fill only',
  'last fill only',
  'dew as rain',
  'trace as zero',
  'zero as trace',
  'other unit',
  'off by one mark',
  'shorter side',
  'wrong choice',
  'other',
] as const
export type DrillReason = (typeof drillReasons)[number]

export type DrillMark = { isRight: true } | { isRight: false; reason: DrillReason; mistake: Mistake | null }

const mistakeOf: Partial<Record<DrillReason, Mistake>> = {
  decimal: 'decimal',
  'other unit': 'unit',
  'first fill forgotten': 'first-fill-lost',
  'first fill only': 'first-fill-only',
  'dew as rain': 'wetted',
}
const choiceMistake: Record<string, Mistake> = {
  'zero or silence': 'false-zero',
  'several days': 'carried',
}
/** Nobody reads hail finer than this with a ruler: a sixteenth of an inch, or 2 mm. */
const HAIL_WITHIN_MM = 2

/** @param answer  as typed, or the name of the choice; of a site drill the number of the place, from 1 */
export function markDrill(drill: Drill, answer: string): DrillMark {
  switch (drill.kind) {
    case 'choice':
      return answer === drill.right
        ? { isRight: true }
        : { isRight: false, reason: 'wrong choice', mistake: choiceMistake[drill.skill] ?? null }
    case 'site':
      return Number(answer) === drill.right + 1 ? { isRight: true } : wrong('wrong choice')
    case 'hail':
      return markHail(drill, answer)
    case 'gauge':
      return markGauge(drill, answer)
  }
}

function markGauge(drill: GaugeDrill, answer: string): DrillMark {
  const { unit, stepUm, trueUm, fillsUm, climbUm } = drill
  const typed = parseAmount(answer, { unit, resolutionUm: stepUm, confirmed: true, finer: 'keep' })
  // Fills typed with plus signs between them are a sum, as on the phone page.
  const sum = typed.kind === 'question' && typed.code === 'AMOUNT_IS_A_SUM' ? typed.choices[0] : undefined
  const read = sum ?? typed
  if (read.kind === 'missing') return wrong('missing')
  if (read.kind !== 'amount') return wrong('unreadable')
  const { amountUm, isTrace } = read
  if (drill.isTrace) {
    if (isTrace) return { isRight: true }
    return wrong(amountUm === 0 ? 'trace as zero' : 'other')
  }
  if (drill.drops === 'dew') {
    if (!isTrace && amountUm === 0) return { isRight: true }
    return wrong('dew as rain')
  }
  if (isTrace) return wrong(trueUm === 0 ? 'zero as trace' : 'other')
  const near = (wantedUm: number, withinUm = stepUm / 2) => Math.abs(amountUm - wantedUm) <= withinUm
  if (near(trueUm, stepUm * 0.25)) return { isRight: true }
  const [first = 0, ...more] = fillsUm
  if (more.length > 0) {
    if (near(trueUm - first)) return wrong('first fill forgotten')
    if (near(first)) return wrong('first fill only')
    if (near(more.at(-1)!)) return wrong('last fill only')
  }
  for (const factor of [10, 0.1, 100, 0.01])
    if (near(trueUm * factor, Math.max(stepUm / 2, 0.005 * trueUm * factor))) return wrong('decimal')
  for (const factor of [25.4, 1 / 25.4])
    if (near(trueUm * factor, Math.max(stepUm / 2, 0.01 * trueUm * factor))) return wrong('other unit')
  if (drill.eyeDeg !== 0 && near(apparentUm(drill, trueUm), stepUm)) return wrong('not at eye level')
  if (near(trueUm + climbUm, stepUm * 0.75) && amountUm > trueUm) return wrong('top of curve')
  if (near(trueUm, stepUm * 1.5)) return wrong('off by one mark')
  return wrong('other')
}

function markHail({ longMm, shortMm, unit }: HailDrill, answer: string): DrillMark {
  const typed = Number(
    answer
      .trim()
      .replace(',', '.')
      .replace(/\s*(mm|cm|in|")$/i, ''),
  )
  if (answer.trim() === '') return wrong('missing')
  if (!Number.isFinite(typed)) return wrong('unreadable')
  const mm = unit === 'in' ? typed * 25.4 : typed
  if (Math.abs(mm - longMm) <= HAIL_WITHIN_MM) return { isRight: true }
  if (Math.abs(mm - shortMm) <= HAIL_WITHIN_MM) return wrong('shorter side')
  if (Math.abs(typed - (unit === 'in' ? longMm : longMm / 25.4)) <= 0.1 * typed) return wrong('other unit')
  if (Math.abs(mm * 10 - longMm) <= 2 || Math.abs(mm / 10 - longMm) <= 2) return wrong('decimal')
  return wrong('other')
}

function wrong(reason: DrillReason): DrillMark {
  return { isRight: false, reason, mistake: mistakeOf[reason] ?? null }
}
