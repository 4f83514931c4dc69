import { expect, it } from 'vitest'
import { mistakeShare } from '../mistakes/rates.ts'
import { emptyDailyTable } from '../network/dailyTable.ts'
import { placeGauges } from '../space/placeGauges.ts'
import { learnModel } from './learnModel.ts'
import { withDecidedRates } from './withDecidedRates.ts'

const gauges = placeGauges([
  { id: 'a', xM: 0, yM: 0, elevationM: null },
  { id: 'b', xM: 3000, yM: 4000, elevationM: 200 },
  { id: 'c', xM: 9000, yM: 1000, elevationM: 350 },
])
const model = { ...learnModel(gauges, emptyDailyTable(3, 20_000, 0)), mistakeFactor: Float64Array.of(1, 1.6, 0.9) }
const none = { mistaken: new Float64Array(3), standing: new Float64Array(3), passed: Float64Array.of(90, 80, 70) }

it('is the model itself where nobody has decided', () => {
  expect(withDecidedRates(model, { ...none, named: {} })).toBe(model)
  expect(model.mistakeShare).toBe(mistakeShare)
})

it('moves the factors from where the record had left them, and leaves the model it was given alone', () => {
  const decided = withDecidedRates(model, { ...none, mistaken: Float64Array.of(1, 0, 9), named: { decimal: 8 } })
  expect(decided.mistakeFactor[2]!).toBeGreaterThan(1.5)
  expect(decided.mistakeFactor[1]!).toBeLessThan(1)
  expect([...model.mistakeFactor]).toEqual([1, 1.6, 0.9])
  expect(decided.mistakeShare.decimal).toBeGreaterThan(mistakeShare.decimal)
  expect(decided.climate).toBe(model.climate)
})

it('refuses counts of another number of gauges', () => {
  expect(() => withDecidedRates(model, { ...none, standing: new Float64Array(2), named: {} })).toThrow('SHAPES_DIFFER')
})
