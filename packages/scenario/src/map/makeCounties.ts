/**
 * Counties grown from their county towns: each cell of the basin goes to the town that is reached most easily, where
 * climbing and crossing a large river cost extra, so that borders settle on ridges and along rivers.
 */
import { fractal, gradientNoise } from '../random/gradientNoise.ts'
import type { Random } from '../random/random.ts'
import { type Grid, smoothGrid } from '../terrain/grid.ts'
import type { Terrain } from '../terrain/makeTerrain.ts'
import { cleanLabels, edgeNeighbours } from './cleanLabels.ts'

const RIVER_KM2 = 700
const RIVER_COST = 90
const MAX_STEP = 400

/** @returns label of each cell: 0 outside the basin, 1…n for the town at that place in `seatCells` */
export function makeCounties(terrain: Terrain, seatCells: readonly number[], random: Random): Int32Array {
  const { columns, rows } = terrain.elevation
  const basin = cleanLabels(Int32Array.from(terrain.inBasin), columns, rows, 2)
  const step = stepCosts(terrain.elevation, terrain.drainage.upstreamCells, random)
  const labels = new Int32Array(columns * rows)
  const costs = new Float64Array(columns * rows).fill(Number.POSITIVE_INFINITY)
  const buckets: number[][] = []
  const offer = (cell: number, cost: number, label: number) => {
    if (basin[cell] !== 1 || cost >= costs[cell]!) return
    costs[cell] = cost
    labels[cell] = label
    buckets[cost] ??= []
    buckets[cost].push(cell)
  }
  seatCells.forEach((cell, index) => {
    offer(cell, 0, index + 1)
  })
  for (let cost = 0; cost < buckets.length; cost++) {
    for (const cell of buckets[cost] ?? []) {
      if (costs[cell] !== cost) continue
      for (const next of edgeNeighbours(cell, columns, rows)) offer(next, cost + step[next]!, labels[cell]!)
    }
    delete buckets[cost]
  }
  return cleanLabels(labels, columns, rows, 3)
}

/** Whole-number cost of entering each cell: more on crests and on large rivers. */
function stepCosts(elevation: Grid, upstreamCells: Float64Array, random: Random): Int32Array {
  const rough = fractal(gradientNoise(random), 3)
  const around = smoothGrid(elevation, 24)
  return Int32Array.from(elevation.values, (heightM, cell) => {
    const crestM = Math.max(0, heightM - around.values[cell]!)
    const river = upstreamCells[cell]! > RIVER_KM2 ? RIVER_COST : 0
    const column = cell % elevation.columns
    const row = (cell - column) / elevation.columns
    const ease = 14 * Math.max(0, 1 + 1.5 * rough(column / 7, row / 7))
    return Math.min(MAX_STEP, Math.round(4 + ease + 1.8 * crestM + river))
  })
}
