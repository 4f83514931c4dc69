/** Every day in the light of all days of the table: the latent field and the sequences by turns, until they agree. */
import { computeCavity, type SweepAsk, sweepDay } from '../expectation/sweepDay.ts'
import { explainReport, sumWeights } from './explainReport.ts'
import { gaugeDaysOf } from './gaugeDays.ts'
import { askedRows, type JudgeAsk, type Judgement } from './judgement.ts'
import { mostNeighbours } from './limits.ts'
import { type Stretch, stretchesEndingAt, sumSequences } from './sequence.ts'
import { writeFinding } from './writeFinding.ts'

/** Rounds for an archive, and for a few days, which a person looks at and decides: these are settled to the end. */
const archiveRounds = 3
const morningRounds = 5
const fewDays = 7
const sweepsPerRound = 2

export function judgeWhole(out: Judgement, ask: JudgeAsk): void {
  const { table } = out.latent
  const { from, to } = askedRows(out.latent, ask)
  settleWhole(out, ask, to - from < fewDays ? morningRounds : archiveRounds)
  for (let row = from; row <= to; row++)
    for (let g = 0; g < table.gaugeCount; g++)
      if (table.spanDays[row * table.gaugeCount + g]! > 0) writeFinding(out, row, g)
}

/** The field and how far each report is believed, without findings. */
export function settleWhole(out: Judgement, ask: JudgeAsk, rounds: number): void {
  const { latent, hood } = out
  const { table } = latent
  const n = table.gaugeCount
  const rows = table.dayCount
  const sweep: SweepAsk = { most: mostNeighbours(n), latestRow: rows - 1, damping: 0.8 }
  const single = new Float64Array(n * rows)
  const { from, to } = askedRows(latent, ask)
  // Days far from those asked for only tell how likely stretches are: they are looked at first and last.
  const nearFrom = Math.max(0, from - 1)
  const nearTo = Math.min(rows - 1, to + 1)
  for (let round = 0; round < rounds; round++) {
    const isLast = round === rounds - 1
    const firstRow = round === 0 ? 0 : nearFrom
    const lastRow = round === 0 ? rows - 1 : nearTo
    for (let pass = 0; pass < sweepsPerRound; pass++)
      for (let row = firstRow; row <= lastRow; row++) sweepDay(latent, hood, row, sweep)
    if (isLast)
      for (let row = 0; row < rows; row++) for (let g = 0; g < n; g++) computeCavity(latent, hood, row, g, sweep)
    for (let g = 0; g < n; g++) judgeGauge(out, single, g, isLast, isLast ? undefined : { from: firstRow, to: lastRow })
  }
}

/** The days of one gauge: weights of each report alone, stretches, exact sums, and how far each report is believed. */
export function judgeGauge(
  out: Judgement,
  single: Float64Array,
  gauge: number,
  isLast: boolean,
  rows: { from: number; to: number } = { from: 0, to: out.latent.table.dayCount - 1 },
): void {
  const { latent } = out
  const { table } = latent
  const n = table.gaugeCount
  const { from: fromRow, to: toRow } = rows
  const standsShare = new Float64Array(table.dayCount)
  for (let row = fromRow; row <= toRow; row++) {
    const i = row * n + gauge
    single[i] = 1
    if (table.spanDays[i] !== 1) continue
    const sources = explainReport(latent, row, gauge)
    single[i] = sumWeights(sources)
    standsShare[row] = sources[0]!.weight / single[i]!
  }
  const days = gaugeDaysOf(latent, single, gauge)
  const stretches: Stretch[] = []
  for (let row = 0; row < table.dayCount; row++) {
    const i = row * n + gauge
    if (table.spanDays[i] === 1 && table.settled[i] !== 1) stretches.push(...stretchesEndingAt(days, row))
  }
  const posterior = sumSequences(table.dayCount, stretches)
  for (let row = 0; row < table.dayCount; row++) {
    const i = row * n + gauge
    out.alone[i] = posterior.alone[row]!
    if (row >= fromRow && row <= toRow && table.spanDays[i] === 1 && table.settled[i] !== 1)
      latent.stands[i] = Math.min(0.9999, posterior.alone[row]! * standsShare[row]!)
  }
  if (!isLast) return
  stretches.forEach((stretch, index) => {
    const chance = posterior.stretch[index]!
    if (chance < 1e-7) return
    for (let row = stretch.from; row <= stretch.to; row++) {
      const i = row * n + gauge
      const list = out.covering.get(i)
      if (list === undefined) out.covering.set(i, [{ stretch, chance }])
      else list.push({ stretch, chance })
    }
  })
}
