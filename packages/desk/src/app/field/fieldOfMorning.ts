/**
 * The field of a judged morning on the network's map. Its parameters are fitted to the day as it was reported, without
 * the readings in doubt, so that a decision moves amounts and never the model; grids and parameters are kept.
 */
import { type DailyTable, type DayAmounts, type FieldParams, fitField } from '@gaugewright/science'
import type { Ledger } from '../../ports/ledger.ts'
import { type JudgedMorning, judgedUndecided } from '../morning/judgedMorning.ts'
import { RecentlyUsed } from '../morning/recentlyUsed.ts'
import { type AmountChange, dayAmounts, withChanges } from './dayAmounts.ts'
import { type MapFrame, type MapGrid, mapFrame, mapGrid } from './mapFrame.ts'

export interface MorningMap {
  frame: MapFrame
  /** For drawing, and a coarse one for measuring how much the map changes. */
  grid: MapGrid
  coarse: MapGrid
}

const FINE = 84
const COARSE = 22

const maps = new WeakMap<Ledger, RecentlyUsed<Promise<MorningMap>>>()
const fits = new WeakMap<Ledger, RecentlyUsed<MorningParams>>()

/** The map of the network. The base map is read once: a new one shows when the desk is opened anew. */
export function mapOfMorning(ledger: Ledger, judged: JudgedMorning): Promise<MorningMap> {
  const { network, gauges } = judged.morning
  const cache = maps.get(ledger) ?? new RecentlyUsed<Promise<MorningMap>>(4)
  maps.set(ledger, cache)
  const key = `${network.id} ${judged.learned.gaugesKey}`
  const before = cache.get(key)
  if (before !== undefined) return before
  const made = ledger.layers(network.id).then((layers) => {
    const frame = mapFrame(gauges, layers)
    return {
      frame,
      grid: mapGrid(frame, gauges, layers, FINE),
      coarse: mapGrid(frame, gauges, layers, COARSE),
    }
  })
  made.catch(() => cache.delete(key))
  cache.set(key, made)
  return made
}

const amountsKept = new WeakMap<DailyTable, DayAmounts>()

/** Not to be changed: it is shared. */
export function amountsOfMorning(judged: JudgedMorning): DayAmounts {
  const before = amountsKept.get(judged.table)
  if (before !== undefined) return before
  const made = dayAmounts(judged.table, judged.morning.epochDay, judged.morning.gauges)
  amountsKept.set(judged.table, made)
  return made
}

export interface MorningParams {
  params: FieldParams
  /** Names them: they rest on the readings alone. */
  key: string
}

/** Parameters of the day's field, the same whatever is decided. */
export function paramsOfMorning(ledger: Ledger, judged: JudgedMorning): MorningParams {
  const cache = fits.get(ledger) ?? new RecentlyUsed<MorningParams>(32)
  fits.set(ledger, cache)
  const undecided = judgedUndecided(ledger, judged)
  const before = cache.get(undecided.stateKey)
  if (before !== undefined) return before
  const inDoubt: AmountChange[] = []
  for (const { standsOdds, index } of undecided.odds.values()) {
    if (standsOdds >= judged.morning.network.docketBelow) continue
    inDoubt.push({ gauge: undecided.judgement.gauge[index] ?? 0, amountMm: Number.NaN, isTrace: false })
  }
  const amounts = withChanges(amountsOfMorning(undecided), inDoubt)
  const made = { params: fitField(judged.learned.gaugeSet, amounts), key: undecided.stateKey }
  cache.set(undecided.stateKey, made)
  return made
}
