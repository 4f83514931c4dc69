/**
 * The check at entry beside the neighbours of the morning: the typed amount is set into a judged table as if it had been
 * sent, and its gauge alone is judged again. Nothing is stored, and the judgement it starts from is not changed.
 */
import { explanationsOf } from '../mistakes/evidence.ts'
import type { Judgement } from '../mistakes/judgement.ts'
import { judgeGauge } from '../mistakes/judgeWhole.ts'
import type { EpochDay } from '../reading/epochDay.ts'
import { type EntryQuestion, entryQuestion } from './entryQuestion.ts'

export interface EntryJudged {
  /** Index of the gauge in the judgement. */
  gauge: number
  amountUm: number
  isTrace: boolean
  firstDay: EpochDay
  lastDay: EpochDay
}

const umPerMm = 1000
const longestSpan = 255

/**
 * @param before  judgement of a table that holds `lastDay`, not made by mornings
 * @returns `cannot tell` where the day lies outside the table or no neighbour has reported
 * @remarks Some 0.1 ms: the day's neighbours were heard when `before` was made.
 */
export function judgeEntry(before: Judgement, entry: EntryJudged): EntryQuestion | null | 'cannot tell' {
  const { table, model } = before.latent
  const row = entry.lastDay - table.firstDay
  const cell = row * table.gaugeCount + entry.gauge
  const spanDays = entry.lastDay - entry.firstDay + 1
  if (row < 0 || row >= table.dayCount || spanDays > longestSpan || before.latent.used[cell] === 0) return 'cannot tell'
  const supposed = {
    ...table,
    amountMm: table.amountMm.slice(),
    isTrace: table.isTrace.slice(),
    spanDays: table.spanDays.slice(),
    settled: table.settled.slice(),
    ...(table.isConfirmed !== undefined && { isConfirmed: table.isConfirmed.slice() }),
  }
  supposed.amountMm[cell] = entry.amountUm / umPerMm
  supposed.isTrace[cell] = entry.isTrace ? 1 : 0
  supposed.spanDays[cell] = spanDays
  supposed.settled[cell] = Number.NaN
  if (supposed.isConfirmed !== undefined) supposed.isConfirmed[cell] = 0
  const latent = { ...before.latent, table: supposed, stands: before.latent.stands.slice() }
  const out: Judgement = { ...before, latent, alone: before.alone.slice(), covering: new Map() }
  judgeGauge(out, new Float64Array(supposed.amountMm.length), entry.gauge, true)
  const stepUm = Math.round(model.climate.resolutionMm[entry.gauge]! * umPerMm)
  const typed = { amountUm: entry.amountUm, stepUm, tubeUm: model.tubeMm * umPerMm }
  return entryQuestion(typed, explanationsOf(out, row, entry.gauge))
}
