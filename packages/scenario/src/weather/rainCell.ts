/** A convective cell: a small round core of rain on a straight track, growing and dying within an hour or two. */
import type { Random } from '../random/random.ts'
import type { HourlyRain } from './hourlyRain.ts'
import type { Sites } from './sites.ts'

export interface Cell {
  startHour: number
  lifeH: number
  /** Where it begins. */
  xKm: number
  yKm: number
  /** Direction it moves to, radians from east, counter-clockwise. */
  direction: number
  speedKmPerH: number
  /** Distance from the core at which the rate has fallen to 1/√e. */
  radiusKm: number
  peakMmPerH: number
}

const STEPS_PER_H = 12

export function rainCell(rain: HourlyRain, sites: Sites, cell: Cell, random: Random): void {
  const vx = cell.speedKmPerH * Math.cos(cell.direction)
  const vy = cell.speedKmPerH * Math.sin(cell.direction)
  const endX = cell.xKm + vx * cell.lifeH
  const endY = cell.yKm + vy * cell.lifeH
  const reachKm = 3 * cell.radiusKm
  const west = Math.min(cell.xKm, endX) - reachKm
  const east = Math.max(cell.xKm, endX) + reachKm
  const south = Math.min(cell.yKm, endY) - reachKm
  const north = Math.max(cell.yKm, endY) + reachKm
  const steps = Math.max(1, Math.round(cell.lifeH * STEPS_PER_H))
  for (let site = 0; site < sites.count; site++) {
    const xKm = sites.xM[site]! / 1000
    const yKm = sites.yM[site]! / 1000
    if (xKm < west || xKm > east || yKm < south || yKm > north) continue
    const nugget = random.logNormal(1, 0.14)
    for (let step = 0; step < steps; step++) {
      const ageH = ((step + 0.5) / steps) * cell.lifeH
      const off2 = (xKm - cell.xKm - vx * ageH) ** 2 + (yKm - cell.yKm - vy * ageH) ** 2
      const shape = Math.exp(-off2 / (2 * cell.radiusKm ** 2))
      if (shape < 0.012) continue
      const rate = cell.peakMmPerH * shape * Math.sin((Math.PI * ageH) / cell.lifeH)
      rain.add(site, cell.startHour + ageH, (rate * cell.lifeH * nugget) / steps)
    }
  }
}
