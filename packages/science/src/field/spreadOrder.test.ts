import { describe, expect, it } from 'vitest'
import { seededRandom } from '../stats/seededRandom.ts'
import { spreadOrder } from './spreadOrder.ts'

describe('spreadOrder', () => {
  it('takes every place once, and its beginning reaches into all quarters of the map', () => {
    const random = seededRandom(14)
    const n = 201
    const xM = Float64Array.from({ length: n }, () => 1000 * random())
    const yM = Float64Array.from({ length: n }, () => 1000 * random())
    const order = spreadOrder(xM, yM)
    expect([...order].sort((a, b) => a - b)).toEqual(Array.from({ length: n }, (_, i) => i))
    const quarters = new Set([...order.subarray(0, 8)].map((i) => (xM[i]! > 500 ? 1 : 0) + (yM[i]! > 500 ? 2 : 0)))
    expect(quarters.size).toBe(4)
  })

  it('answers for one place and for places on top of one another', () => {
    expect([...spreadOrder([5], [6])]).toEqual([0])
    expect([...spreadOrder([5, 5, 5], [6, 6, 6])].sort()).toEqual([0, 1, 2])
  })
})
