/**
 * Reports that belong to one storm: single linkage in space and time. Two are linked where (d/25 km)² + (t/30 min)² ≤ 1;
 * chains of links make a storm, so that a storm may travel far while each step is short [Gower1969]. Reports of weather
 * that does not come out of thunderstorms (snow) are linked among themselves only.
 */
import { distanceM } from '../space/distanceM.ts'
import type { ObservedKind } from './observation.ts'

export interface PlacedReport {
  kind: ObservedKind
  latDeg: number
  lonDeg: number
  seenAtMs: number
}

export const linkKm = 25
export const linkMinutes = 30

/**
 * @param reports  in any order
 * @returns for each report the number of its storm: 0, 1, … in order of the storms' first reports in time
 * @remarks Time O(n log n + pairs within the time of a link). The order of the reports does not matter.
 */
export function clusterReports(reports: readonly PlacedReport[]): number[] {
  const byTime = reports.map((_, index) => index).sort((one, other) => seenAt(reports, one) - seenAt(reports, other))
  const parent = reports.map((_, index) => index)
  const rootOf = (index: number): number => {
    let root = index
    while (parent[root] !== root) root = parent[root] as number
    // Paths are halved on the way back, so that long chains stay cheap.
    for (let at = index; parent[at] !== root; ) {
      const next = parent[at] as number
      parent[at] = root
      at = next
    }
    return root
  }
  for (const [position, index] of byTime.entries()) {
    for (let later = position + 1; later < byTime.length; later++) {
      const other = byTime[later] as number
      if (seenAt(reports, other) - seenAt(reports, index) > linkMinutes * 60_000) break
      if (isLinked(reports[index] as PlacedReport, reports[other] as PlacedReport)) {
        parent[rootOf(other)] = rootOf(index)
      }
    }
  }
  const numberOf = new Map<number, number>()
  const storms = new Array<number>(reports.length)
  for (const index of byTime) {
    const root = rootOf(index)
    const number = numberOf.get(root) ?? numberOf.size
    numberOf.set(root, number)
    storms[index] = number
  }
  return storms
}

function seenAt(reports: readonly PlacedReport[], index: number): number {
  return (reports[index] as PlacedReport).seenAtMs
}

export function isLinked(one: PlacedReport, other: PlacedReport): boolean {
  if ((one.kind === 'snow') !== (other.kind === 'snow')) return false
  const minutes = (one.seenAtMs - other.seenAtMs) / 60_000
  if (Math.abs(minutes) > linkMinutes) return false
  const km = distanceM(one.latDeg, one.lonDeg, other.latDeg, other.lonDeg) / 1000
  return (km / linkKm) ** 2 + (minutes / linkMinutes) ** 2 <= 1
}
