/**
 * Judge a table of reports: latent field, single explanations, stretches over days; joint answer by iteration. Pure and
 * repeatable. `judge` sees every day of the table; with `sameMorning` a day is judged by nothing later than itself.
 */
import { amountMoments, amountQuantile, dryChance, medianAbove, type Predictive, predictiveAt } from '../expectation/predictive.ts'
import { type LatentTable, openLatentTable } from '../expectation/latentTable.ts'
import { buildNeighbourhood, type Neighbourhood } from '../expectation/neighbourhood.ts'
import { computeCavity, type SweepAsk, sweepDay, updateSite } from '../expectation/sweepDay.ts'
import type { Model } from '../model/model.ts'
import type { DailyTable } from '../network/dailyTable.ts'
import type { GaugeSet } from '../network/gaugeSet.ts'
import { type Mistake, mistakes } from './mistake.ts'
import { type GaugeDays, type Stretch, stretchesEndingAt, sumSequences } from './sequence.ts'
import { type Source, sourcesOf } from './sources.ts'

export interface JudgeAsk {
  /** Epoch days, both included. */
  fromDay: number
  toDay: number
  sameMorning: boolean
}

/** Findings as arrays, one entry per judged report, by day, then gauge. */
export interface Judgement {
  count: number
  gauge: Int32Array
  day: Int32Array
  pStands: Float64Array
  mistake: Uint8Array
  pMistake: Float64Array
  proposedMm: Float64Array
  proposedFirstDay: Int32Array
  proposedLastDay: Int32Array
  neighbourCount: Uint8Array
  latent: LatentTable
}

export const neighbourCount = 24
const rounds = 3
const sweepsPerRound = 2

export function judge(gauges: GaugeSet, table: DailyTable, model: Model, ask: JudgeAsk): Judgement {
  const hood = buildNeighbourhood(gauges, model.correlation, Math.min(40, neighbourCount + 10))
  const latent = openLatentTable(table, model)
  const out = emptyJudgement(latent, ask)
  if (ask.sameMorning) judgeForward(latent, hood, ask, out)
  else judgeWhole(latent, hood, ask, out)
  return out
}

function emptyJudgement(latent: LatentTable, ask: JudgeAsk): Judgement {
  const { table } = latent
  let count = 0
  const from = Math.max(0, ask.fromDay - table.firstDay)
  const to = Math.min(table.dayCount - 1, ask.toDay - table.firstDay)
  for (let i = from * table.gaugeCount; i < (to + 1) * table.gaugeCount; i++) if (table.spanDays[i] === 1) count++
  return {
    count: 0,
    gauge: new Int32Array(count),
    day: new Int32Array(count),
    pStands: new Float64Array(count),
    mistake: new Uint8Array(count),
    pMistake: new Float64Array(count),
    proposedMm: new Float64Array(count),
    proposedFirstDay: new Int32Array(count),
    proposedLastDay: new Int32Array(count),
    neighbourCount: new Uint8Array(count),
    latent,
  }
}

interface Workings {
  sources: (Source[] | undefined)[]
  single: Float64Array
}

function judgeWhole(latent: LatentTable, hood: Neighbourhood, ask: JudgeAsk, out: Judgement): void {
  const { table } = latent
  const n = table.gaugeCount
  const sweep: SweepAsk = { most: neighbourCount, latestRow: table.dayCount - 1, damping: 0.8 }
  const work: Workings = { sources: new Array(n * table.dayCount), single: new Float64Array(n * table.dayCount) }
  const gaugeStretches: Stretch[][] = []
  const gaugePosteriors: { alone: Float64Array; stretch: Float64Array }[] = []
  for (let round = 0; round < rounds; round++) {
    for (let pass = 0; pass < sweepsPerRound; pass++) for (let row = 0; row < table.dayCount; row++) sweepDay(latent, hood, row, sweep)
    if (round === rounds - 1) for (let row = 0; row < table.dayCount; row++) for (let g = 0; g < n; g++) computeCavity(latent, hood, row, g, sweep)
    for (let g = 0; g < n; g++) {
      const days = gaugeDays(latent, work, g)
      const stretches: Stretch[] = []
      for (let row = 0; row < table.dayCount; row++) explainAlone(latent, work, row, g)
      for (let row = 0; row < table.dayCount; row++) if (table.spanDays[row * n + g] === 1) stretches.push(...stretchesEndingAt(days, row))
      const posterior = sumSequences(table.dayCount, stretches)
      for (let row = 0; row < table.dayCount; row++) {
        const i = row * n + g
        if (table.spanDays[i] !== 1 || table.settled[i] === 1) continue
        latent.stands[i] = Math.min(0.9999, posterior.alone[row]! * (work.sources[i]![0]!.weight / work.single[i]!))
      }
      if (round === rounds - 1) {
        gaugeStretches[g] = stretches
        gaugePosteriors[g] = posterior
      }
    }
  }
  const from = Math.max(0, ask.fromDay - table.firstDay)
  const to = Math.min(table.dayCount - 1, ask.toDay - table.firstDay)
  const covering: number[][][] = gaugeStretches.map((list) => {
    const rows: number[][] = []
    list.forEach((s, index) => {
      for (let row = s.from; row <= s.to; row++) (rows[row] ??= []).push(index)
    })
    return rows
  })
  for (let row = from; row <= to; row++) {
    for (let g = 0; g < n; g++) {
      if (table.spanDays[row * n + g] !== 1) continue
      const list = (covering[g]![row] ?? []).map((index) => ({ s: gaugeStretches[g]![index]!, p: gaugePosteriors[g]!.stretch[index]! }))
      writeFinding(latent, work, row, g, gaugePosteriors[g]!.alone[row]!, list, out)
    }
  }
}

function judgeForward(latent: LatentTable, hood: Neighbourhood, ask: JudgeAsk, out: Judgement): void {
  const { table } = latent
  const n = table.gaugeCount
  const work: Workings = { sources: new Array(n * table.dayCount), single: new Float64Array(n * table.dayCount) }
  const from = Math.max(0, ask.fromDay - table.firstDay)
  const to = Math.min(table.dayCount - 1, ask.toDay - table.firstDay)
  // ln of the sum over all ways to explain the rows before each row, over the product of single weights.
  const forward = new Float64Array((table.dayCount + 1) * n)
  for (let row = 0; row <= to; row++) {
    const sweep: SweepAsk = { most: neighbourCount, latestRow: row, damping: 0.8 }
    for (let round = 0; round < rounds; round++) {
      for (let pass = 0; pass < sweepsPerRound; pass++) sweepDay(latent, hood, row, sweep)
      for (let g = 0; g < n; g++) {
        if (round === rounds - 1) computeCavity(latent, hood, row, g, sweep)
        const i = row * n + g
        forward[(row + 1) * n + g] = forward[row * n + g]!
        if (table.spanDays[i] !== 1) continue
        explainAlone(latent, work, row, g)
        const stretches = stretchesEndingAt(gaugeDays(latent, work, g), row)
        let all = 1
        const chances = stretches.map((s) => {
          const c = Math.exp(forward[s.from * n + g]! + s.logRatio - forward[row * n + g]!)
          all += c
          return c
        })
        forward[(row + 1) * n + g] = forward[row * n + g]! + Math.log(all)
        if (table.settled[i] !== 1)
          latent.stands[i] = Math.min(0.9999, (1 / all) * (work.sources[i]![0]!.weight / work.single[i]!))
        if (round === rounds - 1 && row >= from)
          writeFinding(latent, work, row, g, 1 / all, stretches.map((s, k) => ({ s, p: chances[k]! / all })), out)
      }
    }
  }
}

function gaugeDays(latent: LatentTable, work: Workings, g: number): GaugeDays {
  const { table, model } = latent
  const n = table.gaugeCount
  return {
    rows: table.dayCount,
    amountMm: (row) => (table.spanDays[row * n + g] === 1 ? table.amountMm[row * n + g]! : Number.NaN),
    isFree: (row) => table.spanDays[row * n + g]! <= 1 && table.settled[row * n + g] !== 1,
    predictive: (row) => predictiveAt(latent, row, g),
    resolutionMm: model.climate.resolutionMm[g]!,
    singleWeight: (row) => work.single[row * n + g]!,
    rate: gaugeRate(model, g),
  }
}

export function gaugeRate(model: Model, g: number): number {
  return Math.min(0.3, model.mistakeRate * model.mistakeFactor[g]!)
}

function explainAlone(latent: LatentTable, work: Workings, row: number, g: number): void {
  const { table, model } = latent
  const n = table.gaugeCount
  const i = row * n + g
  if (table.spanDays[i] !== 1) {
    work.single[i] = 1
    return
  }
  const before = row > 0 && table.spanDays[i - n] === 1 ? table.amountMm[i - n]! : Number.NaN
  const sources = sourcesOf(
    {
      amountMm: table.amountMm[i]!,
      isTrace: table.isTrace[i] === 1,
      previousMm: before,
      resolutionMm: model.climate.resolutionMm[g]!,
      tubeMm: model.tubeMm,
    },
    predictiveAt(latent, row, g),
    gaugeRate(model, g),
  )
  let sum = 0
  for (const s of sources) sum += s.weight
  work.sources[i] = sources
  work.single[i] = Math.max(1e-300, sum)
}

const weightOf = new Float64Array(mistakes.length)

function writeFinding(
  latent: LatentTable,
  work: Workings,
  row: number,
  g: number,
  alone: number,
  stretches: { s: Stretch; p: number }[],
  out: Judgement,
): void {
  const { table } = latent
  const n = table.gaugeCount
  const i = row * n + g
  const sources = work.sources[i]!
  const scale = alone / work.single[i]!
  weightOf.fill(0)
  for (let k = 1; k < sources.length; k++) weightOf[mistakes.indexOf(sources[k]!.kind as Mistake)]! += sources[k]!.weight * scale
  let bestStretch: { s: Stretch; p: number } | null = null
  for (const one of stretches) {
    weightOf[mistakes.indexOf(one.s.kind === 'carried' ? 'carried' : 'day')]! += one.p
  }
  let best = 0
  for (let k = 1; k < mistakes.length; k++) if (weightOf[k]! > weightOf[best]!) best = k
  const kind = mistakes[best]!
  let total = scale * sources[0]!.weight
  for (let k = 0; k < mistakes.length; k++) total += weightOf[k]!
  const c = out.count++
  out.gauge[c] = g
  out.day[c] = table.firstDay + row
  out.pStands[c] = (scale * sources[0]!.weight) / total
  out.mistake[c] = best
  out.pMistake[c] = weightOf[best]! / total
  out.neighbourCount[c] = latent.used[i]!
  out.proposedFirstDay[c] = table.firstDay + row
  out.proposedLastDay[c] = table.firstDay + row
  const p = predictiveAt(latent, row, g)
  if (kind === 'day' || kind === 'carried') {
    for (const one of stretches) {
      if ((one.s.kind === 'carried') !== (kind === 'carried')) continue
      if (bestStretch === null || one.p > bestStretch.p) bestStretch = one
    }
    if (bestStretch === null) {
      out.proposedMm[c] = amountQuantile(p, 0.5)
      return
    }
    const { s } = bestStretch
    if (kind === 'carried') {
      out.proposedMm[c] = table.amountMm[s.to * n + g]!
      out.proposedFirstDay[c] = table.firstDay + s.from
      out.proposedLastDay[c] = table.firstDay + s.to
    } else if (s.kind === 'late') out.proposedMm[c] = row === s.to ? 0 : table.amountMm[(row + 1) * n + g]!
    else out.proposedMm[c] = row === s.from ? 0 : table.amountMm[(row - 1) * n + g]!
    return
  }
  let strongest: Source | null = null
  for (let k = 1; k < sources.length; k++) if (sources[k]!.kind === kind && (strongest === null || sources[k]!.weight > strongest.weight)) strongest = sources[k]!
  out.proposedMm[c] = strongest === null ? amountQuantile(p, 0.5) : impliedMm(p, strongest)
}

/** Median of the true amount if the source is right. */
export function impliedMm(p: Predictive, source: Source): number {
  if (source.highMm <= 0) return 0
  if (source.lowMm <= 0) return amountQuantile(p, 0.5)
  if (source.highMm - source.lowMm < 2) return 0.5 * (source.lowMm + source.highMm)
  if (source.kind === 'false-zero' || source.kind === 'first-fill-only') return medianAbove(p, source.lowMm)
  return 0.5 * (source.lowMm + source.highMm)
}

export { amountMoments, dryChance, updateSite }
