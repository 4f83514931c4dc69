/** Whose gauge mattered most on the wettest day of the last month: by how much it sharpened the map around it. */
import { type DayAmounts, fitField, type Occasion, placeGauges, sharpening } from '@gaugewright/science'
import type { NetworkSettings } from '../../ports/ledger.ts'
import type { Ports } from '../../ports/ports.ts'
import { dayAmounts } from '../field/dayAmounts.ts'
import { believedPast } from './believedPast.ts'
import type { Past } from './pastOf.ts'

const LOOK_BACK_DAYS = 30
/** Below this mean it was no storm. */
const LEAST_MEAN_MM = 5
const LOOKED_AT = 40
const TOLD = 5
const LEAST_SHARE = 0.1

export interface WettestDay {
  day: number
  amounts: DayAmounts
  meanMm: number
}

/** The wettest day once what waits for a decision is left out of it: a slip makes no storm, and is thanked for none. */
async function believedStorm(
  ports: Pick<Ports, 'ledger'>,
  network: NetworkSettings,
  past: Past,
): Promise<WettestDay | null> {
  const looked = new Set<number>()
  for (let sure = past; ; ) {
    const storm = wettestDay(sure, past.lastDay - LOOK_BACK_DAYS + 1, past.lastDay)
    if (storm === null || storm.meanMm < LEAST_MEAN_MM) return null
    if (looked.has(storm.day)) return storm
    looked.add(storm.day)
    sure = await believedPast(ports, network, sure, storm.day, storm.day)
  }
}

export function wettestDay(past: Past, fromDay: number, toDay: number): WettestDay | null {
  let found: WettestDay | null = null
  for (let day = Math.max(past.firstDay, fromDay); day <= Math.min(past.lastDay, toDay); day++) {
    const amounts = dayAmounts(past.table, day, past.gauges)
    let sum = 0
    let count = 0
    for (const mm of amounts.amountMm) {
      if (Number.isNaN(mm)) continue
      sum += mm
      count++
    }
    if (count > 4 && sum / count > (found?.meanMm ?? 0)) found = { day, amounts, meanMm: sum / count }
  }
  return found
}

/** @returns an occasion for each gauge that mattered, by its place among the gauges */
export async function stormOccasions(
  ports: Pick<Ports, 'ledger'>,
  network: NetworkSettings,
  past: Past,
): Promise<Map<number, Occasion>> {
  const found = new Map<number, Occasion>()
  const storm = await believedStorm(ports, network, past)
  if (storm === null) return found
  const shares = sharpenedShares(past, storm)
  const order = [...shares].filter(([, share]) => share >= LEAST_SHARE).sort((a, b) => b[1] - a[1])
  for (const [rank, [index, share]] of order.slice(0, TOLD).entries()) {
    found.set(index, {
      kind: 'storm',
      key: `storm ${storm.day}`,
      day: storm.day,
      sharpenedShare: share,
      rank: rank + 1,
    })
  }
  return found
}

/** Share of doubt that gauges took out of the map of a day: those with most rain, or only those asked for. */
export function sharpenedShares(
  { gauges }: Past,
  { amounts }: WettestDay,
  only?: readonly number[],
): Map<number, number> {
  const set = placeGauges(gauges.map(({ id, latDeg, lonDeg, elevationM }) => ({ id, latDeg, lonDeg, elevationM })))
  const params = fitField(set, amounts)
  const asked =
    only ??
    [...amounts.amountMm.keys()]
      .filter((index) => amounts.amountMm[index]! > 0)
      .sort((a, b) => amounts.amountMm[b]! - amounts.amountMm[a]!)
      .slice(0, LOOKED_AT)
  const reachM = typicalLagM(set.xM, set.yM)
  const shares = new Map<number, number>()
  for (const index of asked) {
    if (Number.isNaN(amounts.amountMm[index]!)) continue
    shares.set(index, sharpening(params, set, amounts, index, reachM).share)
  }
  return shares
}

/** About the distance between neighbours: the square root of the area that a gauge stands for. */
function typicalLagM(xM: Float64Array, yM: Float64Array): number {
  const extent = (values: Float64Array) => Math.max(...values) - Math.min(...values)
  return Math.max(1000, Math.sqrt((extent(xM) * extent(yM)) / Math.max(1, xM.length)))
}
