/** Every day as its own morning saw it: days in order, each by the reports of no later day. */
import { computeCavity, type SweepAsk, sweepDay } from '../expectation/sweepDay.ts'
import { explainReport, sumWeights } from './explainReport.ts'
import { gaugeDaysOf } from './gaugeDays.ts'
import { askedRows, type JudgeAsk, type Judgement } from './judgement.ts'
import { mostNeighbours } from './limits.ts'
import { stretchesEndingAt } from './sequence.ts'
import { writeFinding } from './writeFinding.ts'

const rounds = 3
const sweepsPerRound = 2

export function judgeForward(out: Judgement, ask: JudgeAsk): void {
  const { latent, hood } = out
  const { table } = latent
  const n = table.gaugeCount
  const { from, to } = askedRows(latent, ask)
  const single = new Float64Array(n * table.dayCount).fill(1)
  // ln of the sum over all ways to explain the rows before each row, over the product of their single weights.
  const forward = new Float64Array((table.dayCount + 1) * n)
  for (let row = 0; row <= to; row++) {
    const sweep: SweepAsk = { most: mostNeighbours(n), latestRow: row, damping: 0.8 }
    for (let round = 0; round < rounds; round++) {
      for (let pass = 0; pass < sweepsPerRound; pass++) sweepDay(latent, hood, row, sweep)
      const isLast = round === rounds - 1
      for (let g = 0; g < n; g++) {
        if (isLast) computeCavity(latent, hood, row, g, sweep)
        judgeReport(out, single, forward, row, g, isLast)
      }
    }
    if (row >= from) for (let g = 0; g < n; g++) if (table.spanDays[row * n + g]! > 0) writeFinding(out, row, g)
  }
}

function judgeReport(
  out: Judgement,
  single: Float64Array,
  forward: Float64Array,
  row: number,
  gauge: number,
  isLast: boolean,
): void {
  const { latent } = out
  const { table } = latent
  const n = table.gaugeCount
  const i = row * n + gauge
  const before = forward[row * n + gauge]!
  forward[(row + 1) * n + gauge] = before
  if (table.spanDays[i] !== 1 || table.settled[i] === 1) return
  const sources = explainReport(latent, row, gauge)
  single[i] = sumWeights(sources)
  const stretches = stretchesEndingAt(gaugeDaysOf(latent, single, gauge), row)
  let all = 1
  const weights = stretches.map((stretch) => {
    const weight = Math.exp(forward[stretch.from * n + gauge]! + stretch.logRatio - before)
    all += weight
    return weight
  })
  forward[(row + 1) * n + gauge] = before + Math.log(all)
  out.alone[i] = 1 / all
  latent.stands[i] = Math.min(0.9999, sources[0]!.weight / single[i]! / all)
  if (isLast && stretches.length > 0)
    out.covering.set(
      i,
      stretches.map((stretch, k) => ({ stretch, chance: weights[k]! / all })),
    )
}
