import { modelVersion } from '@gaugewright/science'
import { expect, it } from 'vitest'
import { scienceVersion, shapeOf } from './scienceVersion.ts'

it('scienceVersion names the version and is the same every time', () => {
  expect(scienceVersion()).toBe(scienceVersion())
  expect(scienceVersion().startsWith(`${modelVersion}-`)).toBe(true)
})

it('shapeOf tells models apart by their fields, not by their values', () => {
  const model = { rate: 0.03, gauges: { dry: new Float64Array(3) }, months: [1, 2] }
  expect(shapeOf({ months: [5], gauges: { dry: new Float64Array(9) }, rate: 1 })).toBe(shapeOf(model))
  expect(shapeOf({ ...model, tubeMm: 25.4 })).not.toBe(shapeOf(model))
  expect(shapeOf({ ...model, gauges: { dry: new Float32Array(3) } })).not.toBe(shapeOf(model))
})
