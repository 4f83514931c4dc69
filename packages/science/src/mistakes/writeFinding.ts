/** Turn the weights of all explanations of one report into its finding. */
import { explainReport, gaugeRate, lawOf, sumWeights } from './explainReport.ts'
import { impliedMm } from './impliedAmount.ts'
import type { Judgement } from './judgement.ts'
import { type Mistake, mistakes } from './mistake.ts'
import { slipShareOf } from './slipShare.ts'
import type { Source } from './sources.ts'
import { stretchAmount } from './stretchAmount.ts'

const indexOf = new Map<string, number>(mistakes.map((kind, index) => [kind, index]))
const odds = new Float64Array(mistakes.length)

export function writeFinding(out: Judgement, row: number, gauge: number): void {
  const { latent } = out
  const { table } = latent
  const i = row * table.gaugeCount + gauge
  const sources = explainReport(latent, row, gauge)
  const stretches = out.covering.get(i) ?? []
  const scale = out.alone[i]! / sumWeights(sources)
  odds.fill(0)
  for (const source of sources) {
    if (source.kind !== 'stands') odds[indexOf.get(source.kind)!]! += source.weight * scale
  }
  let stands = sources[0]!.weight * scale
  for (const { stretch, chance } of stretches) {
    const slips = slipShareOf(latent, gauge, stretch)
    odds[indexOf.get(stretch.kind === 'carried' ? 'carried' : 'day')!]! += chance * slips
    stands += chance * (1 - slips)
  }
  let best = 0
  let total = stands
  for (let k = 0; k < mistakes.length; k++) {
    total += odds[k]!
    if (odds[k]! > odds[best]!) best = k
  }
  const c = out.count++
  const day = table.firstDay + row
  out.gauge[c] = gauge
  out.day[c] = day
  out.neighbourCount[c] = latent.used[i]!
  // Without a neighbour nothing can be told: then the report has the odds that any report has.
  const canTell = latent.used[i]! > 0
  const prior = 1 - gaugeRate(latent.model, gauge)
  out.pStands[c] = table.settled[i] === 1 ? 1 : canTell ? stands / total : prior
  out.mistake[c] = best
  out.pMistake[c] = canTell ? odds[best]! / total : (odds[best]! / Math.max(1e-300, total - stands)) * (1 - prior)
  const proposal = propose(out, row, gauge, mistakes[best]!, sources)
  out.proposedMm[c] = proposal.amountMm
  out.proposedFirstDay[c] = proposal.firstDay
  out.proposedLastDay[c] = proposal.lastDay
}

export interface Proposal {
  amountMm: number
  firstDay: number
  lastDay: number
}

/** What the gauge caught, over which days, if the mistake is the one named. */
export function propose(
  out: Judgement,
  row: number,
  gauge: number,
  kind: Mistake,
  sources: readonly Source[],
): Proposal {
  const { latent } = out
  const { table } = latent
  const i = row * table.gaugeCount + gauge
  const day = table.firstDay + row
  const span = Math.max(1, table.spanDays[i]!)
  const own = { firstDay: day - span + 1, lastDay: day }
  if (kind === 'day' || kind === 'carried') {
    let best = null
    for (const one of out.covering.get(i) ?? []) {
      if ((one.stretch.kind === 'carried') !== (kind === 'carried')) continue
      if (best === null || one.chance > best.chance) best = one
    }
    if (best !== null) return stretchAmount(latent, best.stretch, row, gauge)
  }
  let strongest: Source | null = null
  for (const source of sources) {
    if (source.kind === kind && (strongest === null || source.weight > strongest.weight)) strongest = source
  }
  const law = lawOf(latent, row, gauge)
  return { amountMm: strongest === null ? law.quantile(0.5) : impliedMm(law, strongest, 0.5), ...own }
}
