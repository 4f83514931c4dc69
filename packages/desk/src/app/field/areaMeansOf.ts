/** Mean rain of the named areas of the base map, each with its joint uncertainty. */
import type { AreaMean } from '@gaugewright/contract'
import { areaMeans, type DayAmounts, isInside } from '@gaugewright/science'
import type { Ledger } from '../../ports/ledger.ts'
import type { JudgedMorning } from '../morning/judgedMorning.ts'
import { RecentlyUsed } from '../morning/recentlyUsed.ts'
import { amountsKey } from './amountsKey.ts'
import { amountsOfMorning, type MorningMap, paramsOfMorning } from './fieldOfMorning.ts'

/** Simulations: P10 and P90 of an area settle to a few percent of their distance. */
const DRAWS = 240

const kept = new WeakMap<Ledger, RecentlyUsed<AreaMean[]>>()

/** In the order of the base map; areas of a day without any reading are left out. */
export function areaMeansOf(
  ledger: Ledger,
  judged: JudgedMorning,
  map: MorningMap,
  amounts: DayAmounts = amountsOfMorning(judged),
): AreaMean[] {
  const { areas } = map.frame
  if (areas.length === 0) return []
  const { params, key: paramsKey } = paramsOfMorning(ledger, judged)
  const cache = kept.get(ledger) ?? new RecentlyUsed<AreaMean[]>(64)
  kept.set(ledger, cache)
  const key = `${paramsKey} ${amountsKey(amounts)}`
  const before = cache.get(key)
  if (before !== undefined) return before
  const { gaugeSet } = judged.learned
  const means = areaMeans(
    params,
    gaugeSet,
    amounts,
    areas.map((area) => area.rings),
    { draws: DRAWS },
  )
  const made = areas.flatMap(({ name, rings }, index) => {
    const meanMm = means.meanMm[index] ?? Number.NaN
    if (Number.isNaN(meanMm)) return []
    const heard = gaugeSet.ids.filter(
      (_, gauge) =>
        !Number.isNaN(amounts.amountMm[gauge] ?? Number.NaN) &&
        isInside(rings, gaugeSet.xM[gauge] ?? 0, gaugeSet.yM[gauge] ?? 0),
    )
    const p10Mm = means.p10Mm[index] ?? Number.NaN
    const p90Mm = means.p90Mm[index] ?? Number.NaN
    return [{ name, meanMm, p10Mm, p90Mm, gaugeCount: heard.length }]
  })
  cache.set(key, made)
  return made
}
