/** Rivers from the drainage: each runs from its head to where it joins a larger one, the outlet's river being the first. */
import { cellX, cellY } from '../terrain/grid.ts'
import type { Terrain } from '../terrain/makeTerrain.ts'
import { type Feature, toDegrees } from './geojson.ts'
import { type Point, smoothLine, thinLine } from './line.ts'

export interface River {
  name: string
  /** Cells from head to mouth, and the smoothed point for each. */
  cells: number[]
  points: Point[]
}

const HEAD_KM2 = 45
const NAMED_KM2 = 180
/** Upstream area (km²) from which a reach is of order 1, 2, 3; smaller reaches are of order 4. */
const ORDER_KM2 = [4000, 900, 250] as const

export function makeRivers(terrain: Terrain, names: readonly string[]): River[] {
  const donors = donorsOf(terrain)
  const upstream = terrain.drainage.upstreamCells
  const rivers: River[] = []
  const open: { mouth: number; joins: Point | null }[] = [{ mouth: terrain.outletCell, joins: null }]
  for (let next = open.shift(); next !== undefined; next = open.shift()) {
    const cells = stemCells(next.mouth, donors, upstream)
    const line = cells.map((cell): Point => [cellX(terrain.elevation, cell), cellY(terrain.elevation, cell)])
    if (next.joins !== null) line.push(next.joins)
    const points = smoothLine(line, 2)
    if (cells.length >= 4) rivers.push({ name: '', cells, points })
    const tributaries: typeof open = []
    cells.forEach((cell, index) => {
      for (const donor of donors.get(cell) ?? []) {
        if (donor !== cells[index - 1] && upstream[donor]! >= HEAD_KM2)
          tributaries.push({ mouth: donor, joins: points[index]! })
      }
    })
    open.push(...tributaries)
    open.sort((a, b) => upstream[b.mouth]! - upstream[a.mouth]!)
  }
  rivers.forEach((river, index) => {
    const mouthKm2 = upstream[river.cells.at(-1)!]!
    river.name = mouthKm2 >= NAMED_KM2 ? (names[index] ?? '') : ''
  })
  return rivers
}

/** One feature for each river and order of its reaches; nameless brooks carry an empty name. */
export function riverFeatures(rivers: readonly River[], terrain: Terrain): Feature[] {
  const features: Feature[] = []
  for (const river of rivers) {
    const orders = river.cells.map((cell) => orderOf(terrain.drainage.upstreamCells[cell]!))
    for (let from = 0; from < orders.length; ) {
      let to = from
      while (to + 1 < orders.length && orders[to + 1] === orders[from]) to++
      const end = to === orders.length - 1 ? river.points.length : to + 2
      const line = thinLine(river.points.slice(from, end), 60)
      features.push({
        type: 'Feature',
        properties: { name: river.name, order: orders[from]! },
        geometry: { type: 'MultiLineString', coordinates: [toDegrees(line)] },
      })
      from = to + 1
    }
  }
  return features.filter((feature) => feature.geometry.coordinates.length > 0)
}

function orderOf(upstreamKm2: number): number {
  const order = ORDER_KM2.findIndex((limit) => upstreamKm2 >= limit)
  return order === -1 ? ORDER_KM2.length + 1 : order + 1
}

/** From the mouth upstream along the largest branch, returned from head to mouth. */
function stemCells(mouth: number, donors: ReadonlyMap<number, number[]>, upstream: Float64Array): number[] {
  const cells = [mouth]
  for (let cell = mouth; ; ) {
    let largest = -1
    for (const donor of donors.get(cell) ?? []) {
      if (largest === -1 || upstream[donor]! > upstream[largest]!) largest = donor
    }
    if (largest === -1 || upstream[largest]! < HEAD_KM2 / 3) break
    cells.push(largest)
    cell = largest
  }
  return cells.reverse()
}

function donorsOf(terrain: Terrain): Map<number, number[]> {
  const donors = new Map<number, number[]>()
  terrain.drainage.receiver.forEach((to, cell) => {
    if (to === cell) return
    const list = donors.get(to)
    if (list === undefined) donors.set(to, [cell])
    else list.push(cell)
  })
  return donors
}
