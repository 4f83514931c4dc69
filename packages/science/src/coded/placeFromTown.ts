/** A place as storm reports word it: whole miles, one of 16 directions, a town. */
import { bearingDeg, distanceM } from '../space/distanceM.ts'
import type { GeoPoint } from '../space/projection.ts'

const directions = ['N', 'NNE', 'NE', 'ENE', 'E', 'ESE', 'SE', 'SSE', 'S', 'SSW', 'SW', 'WSW', 'W', 'WNW', 'NW', 'NNW']
const M_PER_MILE = 1609.344

/** `2 SSE SOMETOWN`, from the nearest of the towns; the town alone within half a mile; null where there is no town. */
export function placeFromTown(at: GeoPoint, towns: readonly (GeoPoint & { name: string })[]): string | null {
  let nearest: (GeoPoint & { name: string }) | null = null
  let leastM = Number.POSITIVE_INFINITY
  for (const town of towns) {
    const townM = distanceM(town.latDeg, town.lonDeg, at.latDeg, at.lonDeg)
    if (townM < leastM) [nearest, leastM] = [town, townM]
  }
  if (nearest === null) return null
  const miles = Math.round(leastM / M_PER_MILE)
  if (miles === 0) return nearest.name
  return `${miles} ${directions[Math.round(bearingDeg(nearest.latDeg, nearest.lonDeg, at.latDeg, at.lonDeg) / 22.5) % 16]} ${nearest.name}`
}
