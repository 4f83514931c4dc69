/**
 * How much one changed amount moves the map of a large network: measured where it can, round the gauge, by the gauges
 * near it, and told over the whole map. Far gauges and far places do not feel it.
 */
import { type DayAmounts, type FieldParams, fieldWith, type GaugeSet } from '@gaugewright/science'
import { type AmountChange, withChanges } from './dayAmounts.ts'

/** Gauges that are heard, and the one among them whose distance bounds the places looked at. */
const HEARD = 96
const REACH = 24
/** Places along each side of the square looked at. */
const SIDE = 9

/**
 * @param mapAreaM2  of the whole map
 * @returns mean absolute change in mm over the whole map
 */
export function localMapChange(
  params: FieldParams,
  gauges: GaugeSet,
  amounts: DayAmounts,
  change: AmountChange,
  mapAreaM2: number,
): number {
  const xM = gauges.xM[change.gauge] ?? 0
  const yM = gauges.yM[change.gauge] ?? 0
  const near = nearestHeard(gauges, amounts, xM, yM)
  const own = near.findIndex(({ gauge }) => gauge === change.gauge)
  const reachM = near[Math.min(REACH, near.length - 1)]?.distanceM ?? 0
  if (own < 0 || reachM === 0) return 0
  const indices = near.map(({ gauge }) => gauge)
  const set: GaugeSet = {
    ids: indices.map((gauge) => gauges.ids[gauge] ?? ''),
    xM: Float64Array.from(indices, (gauge) => gauges.xM[gauge] ?? 0),
    yM: Float64Array.from(indices, (gauge) => gauges.yM[gauge] ?? 0),
    elevationM: Float64Array.from(indices, (gauge) => gauges.elevationM[gauge] ?? Number.NaN),
  }
  const { resolutionMm } = amounts
  const day: DayAmounts = {
    amountMm: Float64Array.from(indices, (gauge) => amounts.amountMm[gauge] ?? Number.NaN),
    isTrace: Uint8Array.from(indices, (gauge) => amounts.isTrace?.[gauge] ?? 0),
    ...(resolutionMm !== undefined && {
      resolutionMm:
        typeof resolutionMm === 'number'
          ? resolutionMm
          : Float64Array.from(indices, (gauge) => resolutionMm[gauge] ?? 0.1),
    }),
  }
  const places = squareRound(xM, yM, reachM)
  const before = fieldWith(params, set, day, places).meanMm
  const after = fieldWith(params, set, withChanges(day, [{ ...change, gauge: own }]), places).meanMm
  let sum = 0
  for (let place = 0; place < before.length; place++) {
    const moved = Math.abs((after[place] ?? Number.NaN) - (before[place] ?? Number.NaN))
    if (!Number.isNaN(moved)) sum += moved
  }
  const placeAreaM2 = ((2 * reachM) / SIDE) ** 2
  return (sum * placeAreaM2) / Math.max(mapAreaM2, SIDE * SIDE * placeAreaM2)
}

/** Gauges with an amount, nearest first, at most HEARD of them. */
function nearestHeard(
  gauges: GaugeSet,
  amounts: DayAmounts,
  xM: number,
  yM: number,
): { gauge: number; distanceM: number }[] {
  const heard: { gauge: number; distanceM: number }[] = []
  let farthest = Number.POSITIVE_INFINITY
  for (let gauge = 0; gauge < gauges.xM.length; gauge++) {
    if (Number.isNaN(amounts.amountMm[gauge] ?? Number.NaN)) continue
    const distanceM = Math.hypot((gauges.xM[gauge] ?? 0) - xM, (gauges.yM[gauge] ?? 0) - yM)
    if (distanceM >= farthest) continue
    heard.push({ gauge, distanceM })
    if (heard.length < 4 * HEARD) continue
    heard.sort((a, b) => a.distanceM - b.distanceM)
    heard.length = HEARD
    farthest = heard[HEARD - 1]?.distanceM ?? farthest
  }
  return heard.sort((a, b) => a.distanceM - b.distanceM).slice(0, HEARD)
}

function squareRound(xM: number, yM: number, reachM: number): { xM: Float64Array; yM: Float64Array } {
  const places = { xM: new Float64Array(SIDE * SIDE), yM: new Float64Array(SIDE * SIDE) }
  for (let row = 0; row < SIDE; row++) {
    for (let column = 0; column < SIDE; column++) {
      places.xM[row * SIDE + column] = xM + reachM * ((2 * (column + 0.5)) / SIDE - 1)
      places.yM[row * SIDE + column] = yM + reachM * ((2 * (row + 0.5)) / SIDE - 1)
    }
  }
  return places
}
