/**
 * A front: a long band of rain that moves across the basin, uneven along its length, stronger where the air climbs.
 * With a narrow band and a wild pattern it is a squall line.
 */
import type { Random } from '../random/random.ts'
import { smoothField } from '../random/smoothField.ts'
import type { HourlyRain } from './hourlyRain.ts'
import { limitRate } from './limitRate.ts'
import type { Orography } from './orography.ts'
import type { Sites } from './sites.ts'

export interface Front {
  /** Hour at which the middle of the band crosses the middle of the basin. */
  hour: number
  /** Direction it moves to, radians from east, counter-clockwise. */
  direction: number
  speedKmPerH: number
  halfDepthKm: number
  /** Middle and half-length along the band; rain fades out over the last quarter. */
  alongKm: number
  halfLengthKm: number
  intensityMmPerH: number
  /** Spread of the pattern in natural logs, wide (about 40 km) and narrow (about 9 km). */
  wideSpread: number
  narrowSpread: number
  /** How much of the ground's effect it feels, 0 to 1. */
  orographicShare: number
  /** Rate that even the strongest part hardly passes. */
  limitMmPerH: number
  /** Factor by place, for a front that dies on its way. */
  fade?: (xKm: number, yKm: number) => number
}

/** Rain below this rate evaporates on its way down. mm/h. */
const LOST_MM_PER_H = 0.12
/** The pattern inside the band moves on more slowly than the band, and a little along it: rain cells grow and die. */
const PATTERN_PACE = 0.25
const PATTERN_SLIP = 0.12

export function rainFront(rain: HourlyRain, sites: Sites, orography: Orography, front: Front, random: Random): void {
  const wide = smoothField(random, 40, 10)
  const narrow = smoothField(random, 9, 8)
  const cos = Math.cos(front.direction)
  const sin = Math.sin(front.direction)
  const mean = (front.wideSpread ** 2 + front.narrowSpread ** 2) / 2
  const durationH = front.halfDepthKm / front.speedKmPerH
  for (let site = 0; site < sites.count; site++) {
    const xKm = sites.xM[site]! / 1000
    const yKm = sites.yM[site]! / 1000
    const ahead = xKm * cos + yKm * sin
    const along = yKm * cos - xKm * sin
    const nugget = random.logNormal(1, 0.09)
    const end = (front.halfLengthKm - Math.abs(along - front.alongKm)) / (0.5 * front.halfLengthKm)
    if (end <= 0) continue
    const ground = 1 + front.orographicShare * (orography.factor(site, front.direction) - 1)
    const fade = front.fade === undefined ? 1 : front.fade(xKm, yKm)
    const strength = front.intensityMmPerH * Math.min(1, end) * ground * fade
    const arrival = front.hour + ahead / front.speedKmPerH
    for (let hour = Math.floor(arrival - durationH); hour <= arrival + durationH; hour++) {
      const from = Math.max(hour, arrival - durationH)
      const to = Math.min(hour + 1, arrival + durationH)
      const behindKm = ((from + to) / 2 - arrival) * front.speedKmPerH
      const depth = behindKm / front.halfDepthKm
      const driftKm = ((from + to) / 2 - front.hour) * front.speedKmPerH
      const x = ahead - PATTERN_PACE * driftKm
      const y = along - PATTERN_SLIP * driftKm
      const pattern = Math.exp(front.wideSpread * wide(x, y) + front.narrowSpread * narrow(x, y) - mean)
      const rate = limitRate(strength * (1 - depth * depth) * pattern, front.limitMmPerH) - LOST_MM_PER_H
      if (rate > 0 && to > from) rain.add(site, hour, rate * (to - from) * nugget)
    }
  }
}
