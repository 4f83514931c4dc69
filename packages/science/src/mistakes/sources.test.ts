import { describe, expect, it } from 'vitest'
import { type AmountLaw, sumLaw } from './amountLaw.ts'
import { impliedMm } from './impliedAmount.ts'
import type { ExplanationKind } from './mistake.ts'
import { mistakeShare } from './rates.ts'
import type { Reader } from './readMass.ts'
import { type ReportSeen, type Source, sourcesOf } from './sources.ts'

const rate = 0.06
/** About this much is expected: a median, and a spread of about a third of it. */
const around = (mm: number): AmountLaw => sumLaw(mm * 1.05, (mm * 0.35) ** 2, 0.01)
const dryDay = sumLaw(0.03, 0.02, 0.96)

/** Readers by [step in mm, share]; the first step is the last written place. */
const reads = (...steps: (readonly [number, number])[]): Reader => ({
  writtenMm: steps[0]![0],
  stepsMm: steps.map(([step]) => step),
  share: steps.map(([, share]) => share),
})
const inches = (fine: number) => reads([0.01, fine], [0.254, 1 - fine])

function report(amountMm: number, rest: Partial<ReportSeen> = {}): ReportSeen {
  return {
    amountMm,
    isTrace: false,
    previousMm: Number.NaN,
    resolutionMm: 0.1,
    reader: reads([0.1, 1]),
    tubeMm: 25.4,
    ...rest,
  }
}

/** Odds of each kind, all its sources together. */
function oddsOf(sources: readonly Source[]): Map<ExplanationKind, number> {
  const total = sources.reduce((sum, { weight }) => sum + weight, 0)
  const odds = new Map<ExplanationKind, number>()
  for (const { kind, weight } of sources) odds.set(kind, (odds.get(kind) ?? 0) + weight / total)
  return odds
}

function likeliest(sources: readonly Source[]): Source {
  return sources.reduce((best, one) => (one.weight > best.weight ? one : best))
}

describe('sourcesOf', () => {
  it('an amount as expected stands', () => {
    for (const mm of [0.8, 7.3, 41]) {
      const sources = sourcesOf(report(mm), around(mm), rate)
      expect(sources[0]!.kind).toBe('stands')
      expect(oddsOf(sources).get('stands')!).toBeGreaterThan(0.9)
    }
  })

  it('each mistake explains best the report that it makes, and implies the true amount', () => {
    const cases: [ExplanationKind, number, ReportSeen, AmountLaw?][] = [
      ['decimal', 12, report(1.2)],
      ['decimal', 12, report(120)],
      ['decimal', 3.4, report(340)],
      ['decimal', 31, report(0.3)],
      ['unit', 18.8, report(477.5)],
      ['unit', 43.2, report(1.7)],
      ['first-fill-lost', 38, report(12.6)],
      ['first-fill-only', 52, report(25.4)],
      ['false-zero', 16, report(0)],
      ['transposed', 19.3, report(91.3)],
      ['wetted', 0, report(0.5), dryDay],
      ['wetted', 0, report(0, { isTrace: true }), sumLaw(0.001, 1e-5, 0.999)],
      ['repeated', 0, report(17.6, { previousMm: 17.6 }), dryDay],
      ['other', 0, report(88), dryDay],
    ]
    for (const [kind, trueMm, seen, law = around(trueMm)] of cases) {
      const sources = sourcesOf(seen, law, rate)
      const odds = oddsOf(sources)
      const best = [...odds].reduce((a, b) => (b[1] > a[1] ? b : a))
      expect(`${seen.amountMm}: ${best[0]}`).toBe(`${seen.amountMm}: ${kind}`)
      expect(odds.get('stands')!).toBeLessThan(0.5)
      const strongest = likeliest(sources)
      expect(strongest.kind).toBe(kind)
      if (trueMm === 0) expect(strongest.lowMm).toBeLessThan(0)
      else {
        expect(trueMm).toBeGreaterThan(strongest.lowMm - 1e-9)
        expect(trueMm).toBeLessThanOrEqual(strongest.highMm + 1e-9)
      }
    }
  })

  it('weighs an explanation by its prior chance times the chance of the amounts it allows', () => {
    const law = around(12)
    const sources = sourcesOf(report(1.2), law, rate)
    const slipped = sources.find(({ detail }) => detail?.kind === 'decimal' && detail.places === -1)!
    expect([slipped.lowMm, slipped.highMm]).toEqual([expect.closeTo(11.5, 9), expect.closeTo(12.5, 9)])
    expect(slipped.weight / (rate * mistakeShare.decimal * law.mass(11.5, 12.5))).toBeCloseTo(0.4, 9)
    expect(sources[0]!.weight).toBeCloseTo((1 - rate) * law.mass(1.15, 1.25), 12)
  })

  it('knows a typed 1.2 for 12.0 from a typed 120 for 12.0: the first hides a digit, the second hides none', () => {
    const typed = (mm: number) => likeliest(sourcesOf(report(mm), around(12), rate))
    expect(typed(1.2).detail).toEqual({ kind: 'decimal', places: -1 })
    expect(typed(120).detail).toEqual({ kind: 'decimal', places: 1 })
    expect(typed(1.2).highMm - typed(1.2).lowMm).toBeCloseTo(1, 9)
    expect(typed(120).highMm - typed(120).lowMm).toBeCloseTo(0.1, 9)
  })

  it('believes less in a slip that leaves an amount off the step of the gauge', () => {
    const slipped = (typedMm: number) => {
      const reader = reads([0.1, 0.004], [0.2, 0.996])
      const sources = sourcesOf(report(typedMm, { resolutionMm: 0.2, reader }), around(12), rate)
      const one = sources.find(({ detail }) => detail?.kind === 'decimal' && detail.places === 1)!
      return one.weight / around(12).mass(one.lowMm, one.highMm)
    }
    // 120 came from 12.0, which a gauge with steps of 0.2 mm can show; 121 from 12.1, which it cannot.
    expect(slipped(121)).toBeLessThan(slipped(120) / 5)
  })

  it('doubts a report off the step of its gauge, unless the gauge often reads so', () => {
    // 9.91 mm are 39 hundredths of an inch; 10 mm are none.
    const stands = (mm: number, fine: number) =>
      oddsOf(sourcesOf(report(mm, { resolutionMm: 0.254, reader: inches(fine) }), sumLaw(13, 120, 0.3), rate)).get(
        'stands',
      )!
    expect(stands(10, 0.002)).toBeLessThan(stands(9.91, 0.002) - 0.1)
    expect(stands(10, 0.4)).toBeGreaterThan(stands(10, 0.002) + 0.1)
  })

  it('offers only what can have happened: no first fill but at the brim, no repeat but of the day before', () => {
    const kinds = (seen: ReportSeen) => new Set(sourcesOf(seen, around(20), rate).map(({ kind }) => kind))
    expect(kinds(report(25.4)).has('first-fill-only')).toBe(true)
    expect(kinds(report(24.9)).has('first-fill-only')).toBe(false)
    expect(kinds(report(9.4, { previousMm: 9.4 })).has('repeated')).toBe(true)
    expect(kinds(report(9.4, { previousMm: 9.5 })).has('repeated')).toBe(false)
    expect(kinds(report(9.4)).has('repeated')).toBe(false)
    expect(kinds(report(11.1)).has('transposed')).toBe(false)
    expect(kinds(report(0))).toEqual(new Set(['stands', 'false-zero']))
  })

  it('swaps digits of hundredths of an inch for a gauge that is read in them', () => {
    // 0.73 in typed as 0.37 in: 9.398 mm for 18.542 mm.
    const best = likeliest(
      sourcesOf(report(9.4, { resolutionMm: 0.254, reader: inches(0.002) }), sumLaw(18.5, 4, 0.001), rate),
    )
    expect(best.kind).toBe('transposed')
    expect(impliedMm(sumLaw(18.5, 4, 0.001), best, 0.5)).toBeCloseTo(18.54, 1)
  })

  it('a trace stands where little is expected, and is wet', () => {
    const sources = sourcesOf(report(0, { isTrace: true }), sumLaw(0.15, 0.02, 0.3), rate)
    expect(oddsOf(sources).get('stands')!).toBeGreaterThan(0.8)
    expect(sources[0]!.lowMm).toBeGreaterThan(0)
  })

  it('doubts everything more where more mistakes are made', () => {
    const stands = (share: number) => oddsOf(sourcesOf(report(9), around(4), share)).get('stands')!
    expect(stands(0.2)).toBeLessThan(stands(0.06))
    expect(stands(0.06)).toBeLessThan(stands(0.001))
  })

  it('never gives a negative weight, nor none at all to an amount that may be anything', () => {
    for (const mm of [0, 0.1, 0.2, 2.54, 25.4, 100, 499, 2000])
      for (const law of [dryDay, around(5), around(80)])
        for (const { weight, lowMm, highMm } of sourcesOf(report(mm, { previousMm: mm }), law, rate)) {
          expect(weight).toBeGreaterThanOrEqual(0)
          expect(highMm).toBeGreaterThan(lowMm)
        }
    expect(oddsOf(sourcesOf(report(437), dryDay, rate)).get('stands')!).toBeLessThan(0.01)
  })
})

describe('mistakeShare', () => {
  it('shares the whole rate out among the mistakes', () => {
    const shares = Object.values(mistakeShare)
    expect(shares.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 12)
    expect(Math.min(...shares)).toBeGreaterThan(0)
  })
})

describe('impliedMm', () => {
  it('is the expected amount within the range of the explanation, narrow or wide', () => {
    const law = around(12)
    const wide = sourcesOf(report(0), law, rate)[1]!
    expect(wide.kind).toBe('false-zero')
    const [p10, p50, p90] = [0.1, 0.5, 0.9].map((level) => impliedMm(law, wide, level))
    expect(p50! / law.quantile(0.5)).toBeCloseTo(1, 1)
    expect(p10!).toBeLessThan(p50!)
    expect(p50!).toBeLessThan(p90!)
    expect(impliedMm(law, sourcesOf(report(9.4), law, rate)[0]!, 0.5)).toBeCloseTo(9.4, 9)
  })
})
