/**
 * A judgement brought up to date after a few reports were changed, settled or left out: only the gauges that feel it are
 * settled again, from where they stood. What a person decides at the desk shows at once, however many gauges there are.
 */
import { ScienceError } from '../error.ts'
import { type LatentTable, openLatentTable } from '../expectation/latentTable.ts'
import type { Neighbourhood } from '../expectation/neighbourhood.ts'
import { computeCavity, type SweepAsk, updateSite } from '../expectation/sweepDay.ts'
import type { DailyTable } from '../network/dailyTable.ts'
import { judge } from './judge.ts'
import { askedRows, type JudgeAsk, type Judgement, openJudgement } from './judgement.ts'
import { judgeGauge } from './judgeWhole.ts'
import { mostNeighbours } from './limits.ts'
import { writeFinding } from './writeFinding.ts'

const rounds = 2
const sweepsPerRound = 2

/**
 * @param before  judgement of the same gauges and days; of a judgement of mornings, all is judged anew
 * @param table   the reports as they are now
 * @returns findings as judge() would give, but for what has not yet settled to the last digit (see rejudge.test.ts)
 * @throws {ScienceError} SHAPES_DIFFER when the table has other gauges or days than the judgement
 * @remarks Deterministic in `before` and `table`: start from the same judgement to get the same findings.
 */
export function rejudge(before: Judgement, table: DailyTable, ask: JudgeAsk): Judgement {
  const { gauges, hood } = before
  const old = before.latent.table
  if (table.gaugeCount !== old.gaugeCount || table.firstDay !== old.firstDay || table.dayCount !== old.dayCount)
    throw new ScienceError('SHAPES_DIFFER', 'a table of other gauges or days than were judged before')
  if (ask.sameMorning || before.sameMorning) return judge(gauges, table, before.latent.model, ask)
  const n = table.gaugeCount
  const changed = changedCells(old, table)
  const rows = feelingRows(changed, table)
  const isFeeling = feelingGauges(changed, hood, n)
  const out = openJudgement(gauges, openLatentTable(table, before.latent.model), hood, ask)
  takeOver(before, out, new Set(changed), isFeeling)
  settle(out, rows, isFeeling)
  const { from, to } = askedRows(out.latent, ask)
  let index = 0
  for (let row = from; row <= to; row++) {
    for (let g = 0; g < n; g++) {
      const day = table.firstDay + row
      while (
        index < before.count &&
        (before.day[index]! < day || (before.day[index] === day && before.gauge[index]! < g))
      )
        index++
      if (table.spanDays[row * n + g] === 0) continue
      const isKnown = before.day[index] === day && before.gauge[index] === g
      if (isFeeling[g] === 1 || !isKnown) writeFinding(out, row, g)
      else copyFinding(before, index, out)
    }
  }
  return out
}

function changedCells(old: DailyTable, now: DailyTable): number[] {
  const cells: number[] = []
  for (let i = 0; i < now.spanDays.length; i++) {
    const isSame =
      old.spanDays[i] === now.spanDays[i] &&
      old.isTrace[i] === now.isTrace[i] &&
      Object.is(old.amountMm[i], now.amountMm[i]) &&
      Object.is(old.settled[i], now.settled[i]) &&
      (old.isConfirmed?.[i] ?? 0) === (now.isConfirmed?.[i] ?? 0)
    if (!isSame) cells.push(i)
  }
  return cells
}

/** Days of a changed report and those beside them, which gauges of other reading hours look at. */
function feelingRows(changed: readonly number[], table: DailyTable): number[] {
  const rows = new Set<number>()
  for (const cell of changed) {
    const row = Math.floor(cell / table.gaugeCount)
    for (let near = Math.max(0, row - 1); near <= Math.min(table.dayCount - 1, row + 1); near++) rows.add(near)
  }
  return [...rows].sort((a, b) => a - b)
}

/** 1 for the changed gauges, for those that hear one of them, and for those that hear these. */
function feelingGauges(changed: readonly number[], hood: Neighbourhood, n: number): Uint8Array {
  const feels = new Uint8Array(n)
  for (const cell of changed) feels[cell % n] = 1
  for (let ring = 0; ring < 2; ring++) {
    const felt = feels.slice()
    for (let g = 0; g < n; g++) {
      if (felt[g] === 1) continue
      for (let c = 0; c < hood.size; c++) {
        const heard = hood.gauge[g * hood.size + c]!
        if (heard < 0) break
        if (felt[heard] === 1) {
          feels[g] = 1
          break
        }
      }
    }
  }
  return feels
}

/** All that stands of the judgement before: the field but for the changed cells, the stretches of who does not feel it. */
function takeOver(before: Judgement, out: Judgement, changed: ReadonlySet<number>, isFeeling: Uint8Array): void {
  const from = before.latent
  const to = out.latent
  const n = isFeeling.length
  const fields = ['sitePrecision', 'siteShift', 'cavityMean', 'cavityVariance', 'stands', 'spread'] as const
  const kept = ['surprise', 'surpriseWeight', 'used'] as const
  for (let i = 0; i < to.low.length; i++) {
    if (changed.has(i)) continue
    for (const field of fields) to[field][i] = from[field][i]!
    for (const field of kept) to[field][i] = from[field][i]!
  }
  out.alone.set(before.alone)
  for (const [cell, stretches] of before.covering) if (isFeeling[cell % n] === 0) out.covering.set(cell, stretches)
}

function settle(out: Judgement, rows: readonly number[], isFeeling: Uint8Array): void {
  const { latent, hood } = out
  const n = isFeeling.length
  const feeling = Array.from(isFeeling.keys()).filter((g) => isFeeling[g] === 1)
  const sweep: SweepAsk = { most: mostNeighbours(n), latestRow: latent.table.dayCount - 1, damping: 0.8 }
  const single = new Float64Array(n * latent.table.dayCount)
  for (let round = 0; round < rounds; round++) {
    for (let pass = 0; pass < sweepsPerRound; pass++) sweepSome(latent, hood, rows, feeling, sweep)
    const isLast = round === rounds - 1
    if (isLast) for (const row of rows) for (const g of feeling) computeCavity(latent, hood, row, g, sweep)
    for (const g of feeling) judgeGauge(out, single, g, isLast)
  }
}

function sweepSome(
  latent: LatentTable,
  hood: Neighbourhood,
  rows: readonly number[],
  gauges: readonly number[],
  sweep: SweepAsk,
): void {
  const n = latent.table.gaugeCount
  for (const row of rows) {
    for (const g of gauges) {
      computeCavity(latent, hood, row, g, sweep)
      updateSite(latent, row * n + g, sweep.damping)
    }
  }
}

function copyFinding(before: Judgement, index: number, out: Judgement): void {
  const c = out.count++
  out.gauge[c] = before.gauge[index]!
  out.day[c] = before.day[index]!
  out.pStands[c] = before.pStands[index]!
  out.mistake[c] = before.mistake[index]!
  out.pMistake[c] = before.pMistake[index]!
  out.proposedMm[c] = before.proposedMm[index]!
  out.proposedFirstDay[c] = before.proposedFirstDay[index]!
  out.proposedLastDay[c] = before.proposedLastDay[index]!
  out.neighbourCount[c] = before.neighbourCount[index]!
}
