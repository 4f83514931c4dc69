/**
 * Borders of a labelled grid as smooth rings that share their edges exactly: the lattice of cell corners is cut into
 * arcs at every corner where three or more areas meet, each arc is smoothed once, and rings are put together from arcs.
 */
import { type Point, smoothLine, thinLine } from './line.ts'

export interface LabelledGrid {
  columns: number
  rows: number
  cellM: number
  /** South-western corner of cell (0, 0). */
  cornerXM: number
  cornerYM: number
  /** 0 outside every area. */
  labels: Int32Array
}

const SMOOTH_PASSES = 4
const TOLERANCE_M = 90

/** Traces rings of that grid; arcs are kept, so that rings traced one after another share them. */
export class BorderTracer {
  private readonly grid: LabelledGrid
  private readonly arcs = new Map<string, Point[]>()

  constructor(grid: LabelledGrid) {
    this.grid = grid
  }

  /** Closed rings (m) around the cells for which `isMember` holds; counter-clockwise outside, clockwise around holes. */
  rings(isMember: (label: number) => boolean): Point[][] {
    const ahead = this.edges(isMember)
    const rings: Point[][] = []
    for (const start of [...ahead.keys()].sort((a, b) => a - b)) {
      while ((ahead.get(start)?.length ?? 0) > 0) rings.push(this.smoothRing(this.walk(ahead, start)))
    }
    return rings
  }

  /** From each corner the corners ahead of it, members on the left. */
  private edges(isMember: (label: number) => boolean): Map<number, number[]> {
    const { columns, rows } = this.grid
    const ahead = new Map<number, number[]>()
    const add = (from: number, to: number) => {
      const list = ahead.get(from)
      if (list === undefined) ahead.set(from, [to])
      else list.push(to)
    }
    const wide = columns + 1
    for (let row = 0; row < rows; row++) {
      for (let column = 0; column < columns; column++) {
        if (!isMember(this.label(column, row))) continue
        const corner = row * wide + column
        if (!isMember(this.label(column, row - 1))) add(corner, corner + 1)
        if (!isMember(this.label(column + 1, row))) add(corner + 1, corner + wide + 1)
        if (!isMember(this.label(column, row + 1))) add(corner + wide + 1, corner + wide)
        if (!isMember(this.label(column - 1, row))) add(corner + wide, corner)
      }
    }
    return ahead
  }

  /** One ring of corners, its edges taken out of `ahead`; where two ways lead on, the left one stays with the cell. */
  private walk(ahead: Map<number, number[]>, start: number): number[] {
    const ring = [start]
    let at = start
    let heading = 0
    for (;;) {
      const ways = ahead.get(at)!
      const wide = this.grid.columns + 1
      const left = heading === 1 ? wide : heading === wide ? -1 : heading === -1 ? -wide : 1
      const turn = ways.length > 1 ? ways.indexOf(at + left) : 0
      const next = ways.splice(Math.max(turn, 0), 1)[0]!
      heading = next - at
      at = next
      if (at === start) break
      ring.push(at)
    }
    return ring
  }

  private smoothRing(ring: number[]): Point[] {
    const nodes = ring.flatMap((corner, index) => (this.isNode(corner) ? [index] : []))
    if (nodes.length === 0) nodes.push(ring.indexOf(ring.reduce((a, b) => Math.min(a, b))))
    const points: Point[] = []
    for (let index = 0; index < nodes.length; index++) {
      const from = nodes[index]!
      const to = index + 1 < nodes.length ? nodes[index + 1]! : nodes[0]! + ring.length
      const corners: number[] = []
      for (let at = from; at <= to; at++) corners.push(ring[at % ring.length]!)
      points.push(...this.arc(corners).slice(0, -1))
    }
    points.push(points[0]!)
    return points
  }

  /** The smoothed arc along these corners, made in one direction only and turned round for the other side. */
  private arc(corners: number[]): Point[] {
    const key = corners.join()
    const known = this.arcs.get(key)
    if (known !== undefined) return known
    const line = corners.map((corner): Point => this.point(corner))
    const smooth = thinLine(smoothLine(line, SMOOTH_PASSES), TOLERANCE_M)
    this.arcs.set(key, smooth)
    this.arcs.set([...corners].reverse().join(), [...smooth].reverse())
    return smooth
  }

  private isNode(corner: number): boolean {
    const wide = this.grid.columns + 1
    const column = corner % wide
    const row = (corner - column) / wide
    const southWest = this.label(column - 1, row - 1)
    const southEast = this.label(column, row - 1)
    const northWest = this.label(column - 1, row)
    const northEast = this.label(column, row)
    const edges =
      Number(southWest !== southEast) +
      Number(northWest !== northEast) +
      Number(southWest !== northWest) +
      Number(southEast !== northEast)
    return edges > 2
  }

  private label(column: number, row: number): number {
    if (column < 0 || row < 0 || column >= this.grid.columns || row >= this.grid.rows) return 0
    return this.grid.labels[row * this.grid.columns + column]!
  }

  private point(corner: number): Point {
    const wide = this.grid.columns + 1
    const column = corner % wide
    const row = (corner - column) / wide
    return [this.grid.cornerXM + column * this.grid.cellM, this.grid.cornerYM + row * this.grid.cellM]
  }
}
