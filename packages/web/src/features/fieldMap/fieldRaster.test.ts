import { describe, expect, it } from 'vitest'
import { amountScale } from './classScale.ts'
import { classedPixels, filledOutward, valueAt } from './fieldRaster.ts'

const grid = { columns: 3, rows: 2, values: [1, 3, null, 5, 9, null] }

describe('filledOutward', () => {
  it('borrows the mean of known neighbours and leaves known cells alone', () => {
    const filled = filledOutward(grid, 1)
    expect([...filled.slice(0, 2)]).toEqual([1, 3])
    expect(filled[2]).toBe(6)
  })
  it('leaves a grid without any value empty', () => {
    expect(filledOutward({ columns: 2, rows: 1, values: [null, null] }).every(Number.isNaN)).toBe(true)
  })
})

it('valueAt is exact at cell centres, straight between, and flat beyond the edge', () => {
  const filled = Float64Array.of(1, 3, 5, 9)
  expect(valueAt(filled, 2, 2, 0.5, 0.5)).toBe(1)
  expect(valueAt(filled, 2, 2, 1.5, 1.5)).toBe(9)
  expect(valueAt(filled, 2, 2, 1, 0.5)).toBe(2)
  expect(valueAt(filled, 2, 2, 1, 1)).toBe(4.5)
  expect(valueAt(filled, 2, 2, -3, 0.5)).toBe(1)
})

it('classedPixels gives the colour of the class, and nothing where it is dry', () => {
  const scale = amountScale(60, [10, 20, 30], 'mm', false)
  const pixels = classedPixels({ columns: 2, rows: 1, values: [0, 22] }, scale, 2, Float64Array.of(0.5), 200)
  expect([...pixels.slice(0, 4)]).toEqual([0, 0, 0, 0])
  expect([...pixels.slice(4)]).toEqual([...scale.colours[2]!, 200])
})
