import { describe, expect, it } from 'vitest'
import { seededRandom } from '../stats/seededRandom.ts'
import { NearestIndex } from './nearest.ts'

describe('NearestIndex', () => {
  it('agrees with looking at every place, for any count, nearest first', () => {
    const random = seededRandom(11)
    const n = 700
    const xM = Float64Array.from({ length: n }, () => 1000 * random())
    const yM = Float64Array.from({ length: n }, () => 400 * random())
    const index = new NearestIndex(xM, yM)
    for (const count of [1, 2, 7, 33, 150, 700]) {
      const out = new Int32Array(count)
      for (let turn = 0; turn < 20; turn++) {
        const x = 1400 * random() - 200
        const y = 700 * random() - 150
        expect(index.nearestInto(x, y, count, out)).toBe(count)
        const all = Array.from({ length: n }, (_, i) => ({ i, d: (xM[i]! - x) ** 2 + (yM[i]! - y) ** 2 }))
        all.sort((a, b) => a.d - b.d || a.i - b.i)
        expect([...out]).toEqual(all.slice(0, count).map((row) => row.i))
      }
    }
  })

  it('gives all there are when there are fewer, and ties to the lower index', () => {
    const index = new NearestIndex([5, 0, 5, 5], [0, 1, 0, 0])
    const out = new Int32Array(9)
    expect(index.nearestInto(5, 0, 9, out)).toBe(4)
    expect([...out.subarray(0, 4)]).toEqual([0, 2, 3, 1])
    expect(new NearestIndex([], []).nearestInto(0, 0, 3, out)).toBe(0)
  })
})
