import { bench, describe } from 'vitest'
import { placed } from '../../test/support/placed.ts'
import { seededRandom } from '../stats/seededRandom.ts'
import { areaMeans } from './areaMeans.ts'
import { metricGrid } from './fieldGrid.ts'
import { fieldWith } from './fieldWith.ts'
import { fitField } from './fitField.ts'

/** Rain in bands with a third of the gauges dry, as dense as 200 gauges on 250 × 200 km. */
function invented(n: number) {
  const random = seededRandom(1)
  const side = 250_000 * Math.sqrt(n / 200)
  const gauges = placed(
    Array.from({ length: n }, () => side * random()),
    Array.from({ length: n }, () => 0.8 * side * random()),
  )
  const amountMm = Float64Array.from({ length: n }, (_, g) => {
    const rain = 8 * Math.sin(gauges.xM[g]! / 60_000) + 8 * Math.cos(gauges.yM[g]! / 45_000) + 4 * random() - 2
    return Math.max(0, Math.round(10 * rain) / 10)
  })
  return { gauges, day: { amountMm, resolutionMm: 0.254 }, side }
}

describe('the field of a day', () => {
  const { gauges, day, side } = invented(200)
  const params = fitField(gauges, day)
  const grid = metricGrid({ columns: 100, rows: 80, west: 0, south: 0, east: side, north: 0.8 * side })
  const counties = Array.from({ length: 12 }, (_, k) => {
    const x = (k % 4) * 62_000
    const y = Math.floor(k / 4) * 66_000
    return [Float64Array.of(x, y, x + 62_000, y, x + 62_000, y + 66_000, x, y + 66_000)]
  })
  bench('fit, 200 gauges', () => void fitField(gauges, day))
  bench('grid of 100 × 80, 200 gauges', () => void fieldWith(params, gauges, day, grid))
  bench('12 counties, 200 gauges', () => void areaMeans(params, gauges, day, counties))
})

describe('a nation', () => {
  const { gauges, day, side } = invented(25_000)
  const params = fitField(gauges, day)
  const grid = metricGrid({ columns: 300, rows: 240, west: 0, south: 0, east: side, north: 0.8 * side })
  bench('grid of 300 × 240, 25,000 gauges', () => void fieldWith(params, gauges, day, grid), { iterations: 3, time: 0 })
})
