import { fieldWith, fitField, type GaugeSet, seededRandom } from '@gaugewright/science'
import { expect, it } from 'vitest'
import { withChanges } from './dayAmounts.ts'
import { localMapChange } from './localMapChange.ts'
import { meanAbsoluteChange } from './mapChange.ts'

/** 256 gauges about 10 km apart, smooth rain. */
function wideNetwork(): { gauges: GaugeSet; amountMm: Float64Array } {
  const random = seededRandom(31)
  const ids = Array.from({ length: 256 }, (_, index) => `g${index}`)
  const xM = Float64Array.from(ids, (_, index) => 10_000 * (index % 16) + 3000 * random())
  const yM = Float64Array.from(ids, (_, index) => 10_000 * Math.floor(index / 16) + 3000 * random())
  const amountMm = Float64Array.from(ids, (_, index) => {
    const wave = Math.sin((xM[index] ?? 0) / 50_000) * Math.cos((yM[index] ?? 0) / 70_000)
    return Math.round(10 * Math.max(0, 8 + 8 * wave + random())) / 10
  })
  return { gauges: { ids, xM, yM, elevationM: new Float64Array(256).fill(Number.NaN) }, amountMm }
}

it('localMapChange finds by the gauges near by what the whole network says of the whole map, to a quarter', () => {
  const { gauges, amountMm } = wideNetwork()
  const day = { amountMm }
  const params = fitField(gauges, day)
  const side = 80
  const sizeM = 163_000
  const places = {
    xM: Float64Array.from({ length: side * side }, (_, at) => (sizeM * ((at % side) + 0.5)) / side),
    yM: Float64Array.from({ length: side * side }, (_, at) => (sizeM * (Math.floor(at / side) + 0.5)) / side),
  }
  const before = fieldWith(params, gauges, day, places).meanMm
  for (const [gauge, changedMm] of [
    [120, 90],
    [87, 0],
    [136, Number.NaN],
  ] as const) {
    const change = { gauge, amountMm: changedMm, isTrace: false }
    const whole = meanAbsoluteChange(before, fieldWith(params, gauges, withChanges(day, [change]), places).meanMm)
    const local = localMapChange(params, gauges, day, change, sizeM * sizeM)
    expect(local).toBeGreaterThan(0.75 * whole)
    expect(local).toBeLessThan(1.25 * whole)
  }
})
