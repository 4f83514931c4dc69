/** The plain kernel of smallSystem.ts, for wherever simdSystem.ts cannot run. */
import { leastPivot, roomLength, type SmallSystem, systemStride } from './systemRoom.ts'

export function plainSystem(): SmallSystem {
  const room = new Float64Array(roomLength)
  return { room, solve: (count) => solveInPlace(room, count) }
}

/** Two rows by four columns at a time, so that each number is read once for several products. */
function solveInPlace(m: Float64Array, count: number): void {
  const width = count + 2
  let row = 0
  for (; row + 1 < count; row += 2) {
    const first = row * systemStride
    const second = first + systemStride
    for (let column = row; column < width; column += 4) {
      const p = first + column
      const q = second + column
      let a0 = m[p]!
      let a1 = m[p + 1]!
      let a2 = m[p + 2]!
      let a3 = m[p + 3]!
      let b0 = m[q]!
      let b1 = m[q + 1]!
      let b2 = m[q + 2]!
      let b3 = m[q + 3]!
      for (let above = 0; above < first; above += systemStride) {
        const u = m[above + row]!
        const w = m[above + row + 1]!
        const x0 = m[above + column]!
        const x1 = m[above + column + 1]!
        const x2 = m[above + column + 2]!
        const x3 = m[above + column + 3]!
        a0 -= u * x0
        b0 -= w * x0
        a1 -= u * x1
        b1 -= w * x1
        a2 -= u * x2
        b2 -= w * x2
        a3 -= u * x3
        b3 -= w * x3
      }
      m[p] = a0
      m[p + 1] = a1
      m[p + 2] = a2
      m[p + 3] = a3
      m[q] = b0
      m[q + 1] = b1
      m[q + 2] = b2
      m[q + 3] = b3
    }
    const inverse = 1 / Math.sqrt(Math.max(leastPivot, m[first + row]!))
    const cross = m[first + row + 1]! * inverse
    const inverseBelow = 1 / Math.sqrt(Math.max(leastPivot, m[second + row + 1]! - cross * cross))
    m[first + row + 1] = cross
    for (let column = row + 2; column < width; column++) {
      const above = m[first + column]! * inverse
      m[first + column] = above
      m[second + column] = (m[second + column]! - cross * above) * inverseBelow
    }
  }
  if (row < count) solveLastRow(m, row)
}

/** The row left over where their number is odd: only its sides are of use. */
function solveLastRow(m: Float64Array, row: number): void {
  const last = row * systemStride
  let pivot = m[last + row]!
  let withPlace = m[last + row + 1]!
  let value = m[last + row + 2]!
  for (let above = 0; above < last; above += systemStride) {
    const u = m[above + row]!
    pivot -= u * u
    withPlace -= u * m[above + row + 1]!
    value -= u * m[above + row + 2]!
  }
  const inverse = 1 / Math.sqrt(Math.max(leastPivot, pivot))
  m[last + row + 1] = withPlace * inverse
  m[last + row + 2] = value * inverse
}
