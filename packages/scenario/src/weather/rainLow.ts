/** A slow low: hours of wide rain or drizzle whose pattern drifts with the wind, over all or part of the basin. */
import type { Random } from '../random/random.ts'
import { smoothField } from '../random/smoothField.ts'
import type { HourlyRain } from './hourlyRain.ts'
import { limitRate } from './limitRate.ts'
import type { Orography } from './orography.ts'
import type { Sites } from './sites.ts'

export interface Low {
  startHour: number
  hours: number
  xKm: number
  yKm: number
  radiusKm: number
  /** Direction the air moves to at the start, radians; it turns by `turn` until the end. */
  direction: number
  turn: number
  windKmPerH: number
  intensityMmPerH: number
  /** Taken off every hour's rate: a high value leaves rain only where the pattern or the ground is strong. mm/h. */
  lostMmPerH: number
  spread: number
}

/** The pattern drifts more slowly than the air: rain areas grow upwind and die downwind. */
const PATTERN_PACE = 0.3
const LIMIT_MM_PER_H = 9

export function rainLow(rain: HourlyRain, sites: Sites, orography: Orography, low: Low, random: Random): void {
  const wide = smoothField(random, 45, 8)
  const narrow = smoothField(random, 11, 8)
  for (let site = 0; site < sites.count; site++) {
    const xKm = sites.xM[site]! / 1000
    const yKm = sites.yM[site]! / 1000
    const nugget = random.logNormal(1, 0.08)
    const off2 = ((xKm - low.xKm) ** 2 + (yKm - low.yKm) ** 2) / low.radiusKm ** 2
    if (off2 > 6) continue
    const reach = low.intensityMmPerH * Math.exp(-off2 / 2)
    for (let step = 0; step < low.hours; step++) {
      const share = (step + 0.5) / low.hours
      const direction = low.direction + low.turn * share
      const x = xKm - PATTERN_PACE * low.windKmPerH * step * Math.cos(low.direction)
      const y = yKm - PATTERN_PACE * low.windKmPerH * step * Math.sin(low.direction)
      const pattern = Math.exp(low.spread * (0.85 * wide(x, y) + 0.55 * narrow(x, y)) - low.spread ** 2 / 2)
      const swell = Math.sin(Math.PI * share) ** 0.7
      const falling = reach * swell * pattern * orography.factor(site, direction)
      const rate = limitRate(falling, LIMIT_MM_PER_H) - low.lostMmPerH
      if (rate > 0) rain.add(site, low.startHour + step, rate * nugget)
    }
  }
}
