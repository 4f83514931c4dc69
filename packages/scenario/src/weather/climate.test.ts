import { describe, expect, it } from 'vitest'
import { makeBasinMap } from '../map/makeBasinMap.ts'
import { placeGauges } from '../people/placeGauges.ts'
import { Random } from '../random/random.ts'
import { makeTerrain } from '../terrain/makeTerrain.ts'
import { makeWeather } from './makeWeather.ts'

const seed = 4
const siteCount = 120
const lastDay = 20_600
const years = 6
const dayCount = Math.round(years * 365.25)
const terrain = makeTerrain(new Random(seed, 'terrain'))
const sites = placeGauges(terrain, makeBasinMap(terrain, seed), siteCount, new Random(seed, 'gauges'))
const { rain, states } = makeWeather({
  terrain,
  sites,
  firstDay: lastDay - dayCount + 1,
  lastDay,
  seed,
  isReadThisMorning: () => true,
})
/** Sum of each observing day, mm: day × siteCount + site. */
const daily = Float64Array.from({ length: dayCount * siteCount }, (_, cell) => {
  const site = cell % siteCount
  const hour = (Math.floor(cell / siteCount) + 2) * 24 + 7
  return rain.between(site, hour - 24, hour)
})
const isWet = (mm: number) => mm >= 0.13
const annualMm = Array.from({ length: siteCount }, (_, site) => {
  let sum = 0
  for (let day = 0; day < dayCount; day++) sum += daily[day * siteCount + site]!
  return sum / years
})

describe('the basin’s climate', () => {
  it('about one gauge-day in three is wet', () => {
    const share = daily.filter(isWet).length / daily.length
    expect(share).toBeGreaterThan(0.28)
    expect(share).toBeLessThan(0.4)
  })

  it('a year brings about 600-1000 mm to the valleys and 1000-1800 mm to the heights', () => {
    const mean = (low: number, high: number) => {
      const chosen = annualMm.filter((_, site) => sites.elevationM[site]! >= low && sites.elevationM[site]! < high)
      return chosen.reduce((sum, mm) => sum + mm, 0) / chosen.length
    }
    expect(mean(0, 350)).toBeGreaterThan(600)
    expect(mean(0, 350)).toBeLessThan(950)
    expect(mean(850, 2000)).toBeGreaterThan(1000)
    expect(mean(850, 2000)).toBeLessThan(1700)
    expect(Math.min(...annualMm)).toBeGreaterThan(480)
    expect(Math.max(...annualMm)).toBeLessThan(1900)
  })

  it('daily amounts are alike nearby and less so with distance', () => {
    const byDistance = [0, 0, 0, 0].map(() => ({ sum: 0, count: 0 }))
    for (let site = 0; site < siteCount; site++) {
      for (let other = 0; other < site; other++) {
        const km = Math.hypot(sites.xM[site]! - sites.xM[other]!, sites.yM[site]! - sites.yM[other]!) / 1000
        const band = km < 6 ? 0 : km < 20 ? 1 : km < 60 ? 2 : km > 100 ? 3 : -1
        if (band === -1) continue
        byDistance[band]!.sum += correlation(site, other)
        byDistance[band]!.count++
      }
    }
    const [near, middle, far, veryFar] = byDistance.map((band) => band.sum / band.count) as [
      number,
      number,
      number,
      number,
    ]
    expect(near).toBeGreaterThan(0.88)
    expect(middle).toBeLessThan(near - 0.03)
    expect(far).toBeLessThan(middle - 0.08)
    expect(veryFar).toBeLessThan(far - 0.1)
    expect(veryFar).toBeLessThan(0.65)
  })

  it('storms are local: on thundery days nearby gauges agree far less than on frontal days', () => {
    const spreadOn = (state: string) => {
      const ratios: number[] = []
      for (let day = 0; day < dayCount - 6; day++) {
        if (states[day + 1] !== state) continue
        const row = daily.subarray(day * siteCount, (day + 1) * siteCount)
        const wet = [...row].filter(isWet)
        if (wet.length < 15) continue
        const mean = wet.reduce((sum, mm) => sum + mm, 0) / wet.length
        ratios.push(Math.sqrt(wet.reduce((sum, mm) => sum + (mm - mean) ** 2, 0) / wet.length) / mean)
      }
      return ratios.reduce((sum, value) => sum + value, 0) / ratios.length
    }
    expect(spreadOn('thundery')).toBeGreaterThan(1.25 * spreadOn('westerly'))
  })

  it('extremes are rare and possible: 50 mm once in one to five years at a gauge, never 250 mm', () => {
    const perYear = daily.filter((mm) => mm >= 50).length / siteCount / years
    expect(perYear).toBeGreaterThan(0.15)
    expect(perYear).toBeLessThan(1)
    expect(daily.reduce((largest, mm) => Math.max(largest, mm))).toBeLessThan(250)
    expect(daily.reduce((largest, mm) => Math.max(largest, mm))).toBeGreaterThan(80)
  })

  it('no amount is negative or missing', () => {
    expect(daily.every((mm) => mm >= 0)).toBe(true)
  })
})

function correlation(site: number, other: number): number {
  let [sumA, sumB, sumAa, sumBb, sumAb] = [0, 0, 0, 0, 0]
  for (let day = 0; day < dayCount; day++) {
    const a = daily[day * siteCount + site]!
    const b = daily[day * siteCount + other]!
    sumA += a
    sumB += b
    sumAa += a * a
    sumBb += b * b
    sumAb += a * b
  }
  const covariance = sumAb / dayCount - (sumA / dayCount) * (sumB / dayCount)
  const varianceA = sumAa / dayCount - (sumA / dayCount) ** 2
  const varianceB = sumBb / dayCount - (sumB / dayCount) ** 2
  return covariance / Math.sqrt(varianceA * varianceB)
}
