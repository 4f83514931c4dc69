/** Counts of decisions kept in the ledger's cache for the day, so that a desk opened again does not count anew. */
import { createHash } from 'node:crypto'
import type { DecidedCounts } from '@gaugewright/science'
import type { Ledger } from '../../ports/ledger.ts'
import { type DecidedCountsAsk, decidedCounts } from './decidedCounts.ts'

export interface CountedDecisions {
  counts: DecidedCounts
  /** Names the counts. */
  version: string
}

const CACHE_KEY = 'decided'
const MAKE = 1

type Kept = { mistaken: number[]; standing: number[]; passed: number[]; named: DecidedCounts['named'] } | null

/** @returns null where no person has decided anything that counts */
export async function keptCounts(
  ledger: Ledger,
  ask: DecidedCountsAsk & { gaugesKey: string },
): Promise<CountedDecisions | null> {
  const version = `make ${MAKE}, gauges ${ask.gaugesKey}, until ${ask.untilDay}`
  const cached = await ledger.cached(ask.networkId, CACHE_KEY)
  const kept = cached?.version === version ? keptFrom(cached.body, ask.indexOf.size) : undefined
  if (kept !== undefined) return kept === null ? null : counted(kept)
  const counts = await decidedCounts(ledger, ask)
  const made: Kept =
    counts === null
      ? null
      : {
          mistaken: [...counts.mistaken],
          standing: [...counts.standing],
          passed: [...counts.passed],
          named: counts.named,
        }
  await ledger.saveCached(ask.networkId, CACHE_KEY, version, JSON.stringify(made))
  return made === null ? null : counted(made)
}

function counted(kept: NonNullable<Kept>): CountedDecisions {
  const digest = createHash('sha1').update(JSON.stringify(kept)).digest('base64url').slice(0, 8)
  return {
    counts: {
      mistaken: Float64Array.from(kept.mistaken),
      standing: Float64Array.from(kept.standing),
      passed: Float64Array.from(kept.passed),
      named: kept.named,
    },
    version: `decided ${digest}`,
  }
}

/** @returns undefined where the text cannot be used: then the decisions are counted anew, since it is only derived */
function keptFrom(text: string, gaugeCount: number): Kept | undefined {
  try {
    const kept = JSON.parse(text) as Kept
    if (kept === null) return null
    return [kept.mistaken, kept.standing, kept.passed].every((list) => list.length === gaugeCount) ? kept : undefined
  } catch {
    return undefined
  }
}
