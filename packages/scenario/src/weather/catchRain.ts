/**
 * What the gauges catch of what falls: each yard has its own share, and wind carries snow past the rim. Done in place
 * on the hourly rain, so that all later sums are what the gauge held. Sizes of losses: [WMO8] (2-10 % of rain, 10-50 %
 * of snow).
 */
import type { Random } from '../random/random.ts'
import type { HourlyRain } from './hourlyRain.ts'
import type { Sites } from './sites.ts'
import { summerShare } from './synoptic.ts'

const LAPSE_C_PER_M = -0.0063
const VALLEY_MEAN_C = 9.5
const SWING_C = 9

/** Daily mean air temperature (°C) at sea level on wet days: season and a slowly wandering anomaly. */
export function makeTemperatures(firstDayOfYear: number, dayCount: number, random: Random): Float64Array {
  const temperatures = new Float64Array(dayCount)
  let anomaly = 0
  for (let day = 0; day < dayCount; day++) {
    anomaly = 0.75 * anomaly + 2.4 * random.normal()
    temperatures[day] = VALLEY_MEAN_C + SWING_C * (2 * summerShare(firstDayOfYear + day - 8) - 1) + anomaly
  }
  return temperatures
}

export interface Catch {
  /** Share of falling rain that each site's gauge holds. */
  rainShare: Float64Array
  snowShare: Float64Array
}

export function makeCatch(siteCount: number, random: Random): Catch {
  const rainShare = Float64Array.from({ length: siteCount }, () => Math.min(1.02, 0.95 + 0.035 * random.normal()))
  return { rainShare, snowShare: rainShare.map((share) => share * random.between(0.6, 0.92)) }
}

/** Share of the water that falls as snow at this temperature. */
export function snowPart(temperatureC: number): number {
  return Math.min(1, Math.max(0, (2 - temperatureC) / 2.5))
}

export function siteTemperatureC(seaLevelC: number, elevationM: number): number {
  return seaLevelC + LAPSE_C_PER_M * elevationM
}

export function catchRainInPlace(rain: HourlyRain, sites: Sites, temperatures: Float64Array, caught: Catch): void {
  for (let site = 0; site < sites.count; site++) {
    for (let day = 0; day < rain.dayCount; day++) {
      const snow = snowPart(siteTemperatureC(temperatures[day]!, sites.elevationM[site]!))
      const share = caught.rainShare[site]! * (1 - snow) + caught.snowShare[site]! * snow
      const first = site * rain.hourCount + day * 24
      for (let hour = first; hour < first + 24; hour++) rain.mm[hour] = rain.mm[hour]! * share
    }
  }
}
