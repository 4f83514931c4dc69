/** Lines on the plane: smoothing, thinning, area. A line is a list of [x, y] in m; a ring repeats its first point. */
export type Point = [number, number]

/** Binomial smoothing of the inner points; the ends stay. Keeps the number of points. */
export function smoothLine(line: readonly Point[], passes: number): Point[] {
  let from = line.map(([x, y]): Point => [x, y])
  for (let pass = 0; pass < passes; pass++) {
    from = from.map((point, index): Point => {
      const before = from[index - 1]
      const after = from[index + 1]
      if (before === undefined || after === undefined) return point
      return [(before[0] + 2 * point[0] + after[0]) / 4, (before[1] + 2 * point[1] + after[1]) / 4]
    })
  }
  return from
}

/** Leave out points that lie within `toleranceM` of the line without them; the ends stay. Source: [Douglas1973]. */
export function thinLine(line: readonly Point[], toleranceM: number): Point[] {
  const keep = new Uint8Array(line.length)
  keep[0] = 1
  keep[line.length - 1] = 1
  const spans: [number, number][] = [[0, line.length - 1]]
  for (let span = spans.pop(); span !== undefined; span = spans.pop()) {
    const [first, last] = span
    let furthest = -1
    let furthestM = toleranceM
    for (let index = first + 1; index < last; index++) {
      const offM = distanceToSegment(line[index]!, line[first]!, line[last]!)
      if (offM > furthestM) {
        furthestM = offM
        furthest = index
      }
    }
    if (furthest === -1) continue
    keep[furthest] = 1
    spans.push([first, furthest], [furthest, last])
  }
  return line.filter((_, index) => keep[index] === 1)
}

export function distanceToSegment(point: Point, from: Point, to: Point): number {
  const dx = to[0] - from[0]
  const dy = to[1] - from[1]
  const length2 = dx * dx + dy * dy
  const along = length2 === 0 ? 0 : ((point[0] - from[0]) * dx + (point[1] - from[1]) * dy) / length2
  const share = Math.min(1, Math.max(0, along))
  return Math.hypot(point[0] - from[0] - share * dx, point[1] - from[1] - share * dy)
}

/** Signed area of a closed ring: positive when it runs counter-clockwise. Square of the unit of the points. */
export function ringArea(ring: readonly (readonly [number, number])[]): number {
  let doubled = 0
  for (let index = 1; index < ring.length; index++) {
    const from = ring[index - 1]!
    const to = ring[index]!
    doubled += from[0] * to[1] - to[0] * from[1]
  }
  return doubled / 2
}

/** Whether a point lies inside a closed ring (even-odd rule). */
export function isInsideRing(x: number, y: number, ring: readonly (readonly [number, number])[]): boolean {
  let isInside = false
  for (let index = 1; index < ring.length; index++) {
    const [ax, ay] = ring[index - 1]!
    const [bx, by] = ring[index]!
    if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) isInside = !isInside
  }
  return isInside
}
