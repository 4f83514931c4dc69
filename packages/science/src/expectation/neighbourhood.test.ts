import { describe, expect, it } from 'vitest'
import { rainyNetwork } from '../../test/support/rainyNetwork.ts'
import { normalDeviates, seededRandom } from '../stats/seededRandom.ts'
import type { Correlation } from './correlation.ts'
import { usualCorrelation } from './learnCorrelation.ts'
import { buildNeighbourhood, type Neighbourhood } from './neighbourhood.ts'

const n = 40
const size = 20
const { gauges } = rainyNetwork(3, n, 1)

/** Least pivot of the correlation matrix of a gauge (its own row last) and its candidates; by plain elimination. */
function leastPivot(hood: Neighbourhood, gauge: number): number {
  const count = candidates(hood, gauge)
  const base = gauge * hood.size
  const rows = Array.from({ length: count + 1 }, (_, a) =>
    Float64Array.from({ length: count + 1 }, (__, b) => {
      if (a === count) return b === count ? 1 : hood.withGauge[base + b]!
      return b === count ? hood.withGauge[base + a]! : hood.among[(base + a) * hood.size + b]!
    }),
  )
  let least = Number.POSITIVE_INFINITY
  for (let a = 0; a <= count; a++) {
    least = Math.min(least, rows[a]![a]!)
    for (let b = a + 1; b <= count; b++) {
      const f = rows[b]![a]! / rows[a]![a]!
      for (let c = a; c <= count; c++) rows[b]![c]! -= f * rows[a]![c]!
    }
  }
  return least
}

function candidates(hood: Neighbourhood, gauge: number): number {
  let count = 0
  while (count < hood.size && hood.gauge[gauge * hood.size + count]! >= 0) count++
  return count
}

/** Pair correlations that no field could have: any sign, any size. */
function contradictory(correlation: Correlation, spread: number): Correlation {
  const deviate = normalDeviates(seededRandom(77))
  const i: number[] = []
  const j: number[] = []
  for (let a = 0; a < n; a++) {
    for (let b = a + 1; b < n; b++) {
      i.push(a)
      j.push(b)
    }
  }
  const byLag = Float32Array.from({ length: i.length * 5 }, (_, k) =>
    Math.max(-0.98, Math.min(0.98, (k % 5 === 2 ? 0.6 : 0.3) + spread * deviate())),
  )
  return { ...correlation, pairs: { i: Int32Array.from(i), j: Int32Array.from(j), byLag } }
}

const usual = usualCorrelation(n)
const shifted = { ...usual, offsetDays: Float64Array.from({ length: n }, (_, g) => (g % 4 === 0 ? 0.875 : 0)) }
const unequal = { ...usual, fit: Float64Array.from({ length: n }, (_, g) => 0.55 + 0.012 * g) }

describe('buildNeighbourhood', () => {
  it('gives every gauge a valid correlation matrix: positive definite, whatever the pairs say', () => {
    for (const correlation of [usual, shifted, unequal, contradictory(usual, 0.1), contradictory(shifted, 0.5)]) {
      const hood = buildNeighbourhood(gauges, correlation, size)
      for (let g = 0; g < n; g++) {
        expect(candidates(hood, g)).toBeGreaterThan(0)
        expect(leastPivot(hood, g)).toBeGreaterThan(0.001)
      }
    }
  })

  it('stays valid where gauges stand side by side', () => {
    const beside = {
      ...gauges,
      xM: gauges.xM.map((x, g) => (g < 6 ? 1_000 : x)),
      yM: gauges.yM.map((y, g) => (g < 6 ? 2_000 : y)),
    }
    const hood = buildNeighbourhood(beside, usual, size)
    for (let g = 0; g < n; g++) expect(leastPivot(hood, g)).toBeGreaterThan(0.001)
  })

  it('lists other gauges only, each day of each once, those that tell most first', () => {
    const hood = buildNeighbourhood(gauges, shifted, size)
    for (let g = 0; g < n; g++) {
      const seen = new Set<string>()
      for (let c = 0; c < candidates(hood, g); c++) {
        const at = g * size + c
        expect(hood.gauge[at]).not.toBe(g)
        seen.add(`${hood.gauge[at]} ${hood.lagDays[at]}`)
        if (c > 0) expect(hood.withGauge[at]!).toBeLessThanOrEqual(hood.withGauge[at - 1]! + 1e-6)
      }
      expect(seen.size).toBe(candidates(hood, g))
    }
  })

  it('asks a gauge that dates its days early about the day before, and only same days where all date alike', () => {
    const hood = buildNeighbourhood(gauges, shifted, size)
    const lagsOf = (g: number, early: boolean) =>
      Array.from({ length: candidates(hood, g) }, (_, c) => g * size + c)
        .filter((at) => (hood.gauge[at]! % 4 === 0) === early)
        .map((at) => hood.lagDays[at])
    // Gauge 1 dates as most do; what it dates d, an early gauge has dated d - 1.
    expect(lagsOf(1, true)[0]).toBe(-1)
    expect(new Set(lagsOf(1, false))).toEqual(new Set([0]))
    expect(lagsOf(4, false)[0]).toBe(1)
    expect(new Set(buildNeighbourhood(gauges, usual, size).lagDays)).toEqual(new Set([0]))
  })

  it('leaves places empty in a network of two, and all in a network of one', () => {
    const some = (count: number) => ({
      ids: gauges.ids.slice(0, count),
      xM: gauges.xM.slice(0, count),
      yM: gauges.yM.slice(0, count),
      elevationM: gauges.elevationM.slice(0, count),
    })
    const two = buildNeighbourhood(some(2), usualCorrelation(2), size)
    expect([candidates(two, 0), candidates(two, 1), two.gauge[0], two.gauge[size]]).toEqual([1, 1, 1, 0])
    expect(candidates(buildNeighbourhood(some(1), usualCorrelation(1), size), 0)).toBe(0)
  })
})
