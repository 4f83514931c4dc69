import { expect, it } from 'vitest'
import { type Reader, readMass } from './readMass.ts'

/** Every amount alike: the mass of an interval is its width over 100 mm. */
const even = (lowMm: number, highMm: number): number => Math.max(0, highMm - lowMm) / 100
const reader: Reader = { writtenMm: 0.1, stepsMm: [0.1, 0.2, 1], share: [0.2, 0.5, 0.3] }

it('readMass gives each amount the cells of the marks it lies on', () => {
  // 7.3 is a mark of tenths alone; 7.4 of fifths as well; 7 of all three.
  expect(readMass(even, reader, 7.3, 0, 0.05)).toBeCloseTo((0.2 * 0.1) / 100, 12)
  expect(readMass(even, reader, 7.4, 0, 0.05)).toBeCloseTo((0.2 * 0.1 + 0.5 * 0.2) / 100, 12)
  expect(readMass(even, reader, 7, 0, 0.05)).toBeCloseTo((0.2 * 0.1 + 0.5 * 0.2 + 0.3 * 1) / 100, 12)
})

it('readMass over all amounts written comes to the whole mass', () => {
  let sum = 0
  for (let k = 1; k <= 1000; k++) sum += readMass(even, reader, k / 10, 0, 0)
  expect(Math.abs(sum - even(0, 100))).toBeLessThan(0.003)
})

it('readMass of an amount of which digits are lost takes all marks that it may have been', () => {
  // 45 ± 0.5: five marks of fifths, ten of tenths, one whole millimetre.
  expect(readMass(even, reader, 45, 0.5, 0.05)).toBeCloseTo(1 / 100, 12)
})

it('readMass counts nothing that would have been read as nothing', () => {
  expect(readMass(even, reader, 1, 0, 0.8)).toBeLessThan(readMass(even, reader, 1, 0, 0.05))
  expect(readMass(even, reader, 0.03, 0, 0.05)).toBe(0)
})

it('readMass leaves a little to an amount finer than the network ever wrote, as after a conversion', () => {
  const finer = readMass(even, reader, 7.62, 0, 0.05)
  expect(finer).toBeGreaterThan(0)
  expect(finer).toBeLessThan(readMass(even, reader, 7.3, 0, 0.05) / 100)
})
