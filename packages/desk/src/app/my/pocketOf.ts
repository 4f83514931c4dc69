/** The climate of one gauge, from the model of its network, if there is one by now. */
import type { OwnClimate } from '@gaugewright/contract'
import { type PocketClimate, pocketClimate } from '@gaugewright/science'
import type { Ledger } from '../../ports/ledger.ts'
import { learnedModel } from '../model/learnedModel.ts'

/** A phone is not kept waiting for a model to be learned: it asks again with its next look. */
const PATIENCE_MS = 400

export async function pocketOf(ledger: Ledger, networkId: string, gaugeId: string): Promise<PocketClimate | null> {
  const [gauges, range] = await Promise.all([ledger.gauges(networkId), ledger.dayRange(networkId)])
  if (range === null) return null
  const learning = learnedModel(ledger, { networkId, gauges, range }).catch(() => null)
  const learned = await Promise.race([learning, after(PATIENCE_MS)])
  const index = learned?.indexOf.get(gaugeId)
  return learned === null || index === undefined ? null : pocketClimate(learned.model, index)
}

export function wireOwnClimate({ climate, mistakeRate, tubeMm }: PocketClimate): OwnClimate {
  return {
    resolutionMm: climate.resolutionMm[0] ?? 0.254,
    rounding: {
      writtenMm: climate.rounding.writtenMm,
      stepsMm: [...climate.rounding.stepsMm],
      share: rounded(climate.rounding.share),
    },
    dryShare: rounded(climate.dryShare),
    scaleMm: rounded(climate.scaleMm),
    wetScore: rounded(climate.wetScore),
    mistakeRate,
    tubeMm,
  }
}

/** Five figures behind the point are far below what the check can feel, and halve what is sent. */
function rounded(values: Float64Array): number[] {
  return Array.from(values, (value) => Math.round(value * 1e5) / 1e5)
}

function after(ms: number): Promise<null> {
  return new Promise((resolve) => setTimeout(() => resolve(null), ms).unref())
}
