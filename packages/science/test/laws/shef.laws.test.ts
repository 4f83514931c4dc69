import {
  type DecodedShefValue,
  decodeShef,
  encodeShefSeries,
  encodeShefTable,
  encodeShefValues,
  type ShefDatum,
  type ShefValue,
  shefAmount,
  shefDepth,
} from '@gaugewright/science'
import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'

const nowUtcMs = Date.UTC(2026, 2, 29)
const location = fc.stringMatching(/^[A-Z0-9_]{3,8}$/)
const instantMs = fc
  .integer({ min: Date.UTC(1900, 0, 1) / 1000, max: Date.UTC(2100, 0, 1) / 1000 })
  .map((s) => s * 1000)
const minuteMs = instantMs.map((ms) => ms - (ms % 60_000))
const number: fc.Arbitrary<ShefDatum> = fc
  .tuple(fc.integer({ min: 0, max: 99_999 }), fc.integer({ min: 1, max: 3 }))
  .map(([value, decimals]) => (value / 10 ** decimals).toFixed(decimals))
  .map((text) => ({ kind: 'number', value: Number(text), text }))
const datum = fc.oneof(number, fc.constant<ShefDatum>({ kind: 'trace' }), fc.constant<ShefDatum>({ kind: 'missing' }))
const code = fc.constantFrom('PPDRZZZ', 'PCIRZZZ', 'SFDRZZZ', 'SDIRGZZ', 'SWIRZZZ', 'PPHRZZZ', 'PPVRZZZ', 'PPWRPZ5')
const span = fc.record({
  unit: fc.constantFrom('D' as const, 'H' as const, 'N' as const),
  count: fc.integer({ min: 1, max: 99 }),
})

const value: fc.Arbitrary<ShefValue> = fc
  .record({
    location,
    observedAtUtcMs: instantMs,
    createdAtUtcMs: fc.option(minuteMs),
    code,
    span,
    datum,
    units: fc.constantFrom('english' as const, 'metric' as const),
    qualifier: fc.constantFrom('Z', 'E', 'R', 'M', 'T'),
    isRevision: fc.boolean(),
    comment: fc.option(fc.stringMatching(/^[A-Za-z0-9 :/,.]{0,80}$/)),
  })
  .map(({ span: spanOf, ...rest }) => ({ ...rest, variable: rest.code[2] === 'V' ? spanOf : null, sinceUtcMs: null }))

function bare({ form: _form, line: _line, column: _column, text: _text, ...rest }: DecodedShefValue): ShefValue {
  return rest
}

/** As many as differ in place, code and time: of twins only the first would be kept. */
function withoutTwins(values: ShefValue[]): ShefValue[] {
  const seen = new Set<string>()
  return values.filter((one) => {
    const key = `${one.location} ${one.code} ${one.observedAtUtcMs} ${one.variable?.unit}${one.variable?.count} ${one.createdAtUtcMs}`
    return seen.size < seen.add(key).size
  })
}

describe('SHEF', () => {
  it('.A: what is encoded is decoded to the same values, in order', () => {
    void fc.assert(
      fc.property(fc.array(value, { maxLength: 30 }).map(withoutTwins), (values) => {
        const encoded = encodeShefValues(values)
        if (encoded.kind !== 'text') throw new Error(`${encoded.seen}: ${encoded.wanted}`)
        const decoded = decodeShef(encoded.text, { nowUtcMs })
        expect(decoded.problems).toEqual([])
        expect(decoded.values.map(bare)).toEqual(values)
      }),
      { numRuns: 300, seed: 11 },
    )
  })

  it('.E: each step has its value, and a value that is not reported its place', () => {
    const series = fc.record({
      location,
      firstAtUtcMs: instantMs,
      step: fc.record({
        unit: fc.constantFrom('N' as const, 'H' as const, 'D' as const),
        count: fc.integer({ min: 1, max: 99 }),
      }),
      code: fc.constantFrom('PPDRZZZ', 'SWIRZZZ'),
      units: fc.constantFrom('english' as const, 'metric' as const),
      isRevision: fc.boolean(),
      data: fc.array(fc.option(datum), { minLength: 1, maxLength: 40 }),
    })
    const stepMs = { N: 60_000, H: 3_600_000, D: 86_400_000 }
    void fc.assert(
      fc.property(series, (given) => {
        const encoded = encodeShefSeries(given)
        if (encoded.kind !== 'text') throw new Error(`${encoded.seen}: ${encoded.wanted}`)
        const decoded = decodeShef(encoded.text, { nowUtcMs })
        expect(decoded.problems).toEqual([])
        const wanted = given.data.flatMap((one, index) =>
          one === null
            ? []
            : [
                [
                  given.firstAtUtcMs + index * given.step.count * stepMs[given.step.unit],
                  one,
                  given.units,
                  given.isRevision,
                ],
              ],
        )
        expect(decoded.values.map((one) => [one.observedAtUtcMs, one.datum, one.units, one.isRevision])).toEqual(wanted)
      }),
      { numRuns: 300, seed: 12 },
    )
  })

  it('.B: each station has its values under their codes', () => {
    const codes = ['PPDRZZZ', 'SFDRZZZ', 'SDIRZZZ']
    const table = fc.record({
      source: location,
      observedAtUtcMs: instantMs,
      createdAtUtcMs: fc.option(minuteMs),
      units: fc.constantFrom('english' as const, 'metric' as const),
      rows: fc.uniqueArray(
        fc.record({
          location,
          minutesLate: fc.integer({ min: -3000, max: 3000 }),
          data: fc.array(fc.option(datum), { maxLength: 3 }),
        }),
        {
          selector: (row) => row.location,
          maxLength: 30,
        },
      ),
    })
    void fc.assert(
      fc.property(table, (given) => {
        const encoded = encodeShefTable({
          ...given,
          codes,
          rows: given.rows.map((row) => ({
            ...row,
            observedAtUtcMs: given.observedAtUtcMs + row.minutesLate * 60_000,
          })),
        })
        if (encoded.kind !== 'text') throw new Error(`${encoded.seen}: ${encoded.wanted}`)
        const decoded = decodeShef(encoded.text, { nowUtcMs })
        expect(decoded.problems).toEqual([])
        const wanted = given.rows.flatMap((row) =>
          row.data.flatMap((one, index) =>
            one === null
              ? []
              : [
                  [
                    row.location,
                    codes[index],
                    one,
                    given.observedAtUtcMs + row.minutesLate * 60_000,
                    given.createdAtUtcMs,
                  ],
                ],
          ),
        )
        expect(
          decoded.values.map((one) => [one.location, one.code, one.datum, one.observedAtUtcMs, one.createdAtUtcMs]),
        ).toEqual(wanted)
      }),
      { numRuns: 300, seed: 13 },
    )
  })

  it('depths go there and back exactly, in either unit', () => {
    void fc.assert(
      fc.property(fc.integer({ min: 0, max: 2_000_000 }), fc.boolean(), (amountUm, isTrace) => {
        const depth = { amountUm: isTrace ? 0 : amountUm, isTrace }
        for (const units of ['english', 'metric'] as const) {
          expect(shefAmount({ datum: shefDepth(depth, units), units, code: 'PPDRZZZ' })).toEqual(depth)
        }
      }),
      { numRuns: 2000, seed: 14 },
    )
  })

  const pieces = fc.constantFrom(
    '.A ', '.AR ', '.B ', '.BR ', '.E ', '.E1 ', '.A1 ', '.B2 ', '.END', 'EGTM7 ', '0612 ', '20260231 ', '9912319 ', 'C ', 'QQ ',
    'DH08', 'DH', 'DRE-1', 'DRD+99', 'DJ366', 'DT2026022912', 'DY99123123', 'DC1', 'DUS', 'DQO', 'DVD3', 'DVZ', 'DID1', 'DIE1', 'DIY99',
    '/', '//', ' ', ',', ':', '"', '\n', '\r\n', 'PP ', 'PY', 'PPP', 'PPV', 'SD', '1.20', 'T', '+', 'M', '-9999', '38', '1e9', '.', '0.5E',
  ) // biome-ignore format: one list of pieces
  const text = fc.oneof(
    fc.array(pieces, { maxLength: 60 }).map((parts) => parts.join('')),
    fc.string({ unit: 'binary', maxLength: 200 }),
    fc
      .array(fc.oneof(pieces, fc.string({ maxLength: 4 })), { maxLength: 60 })
      .map((parts) => `.A EGTM7 0612 C DH08/${parts.join('')}`),
  )

  it('never throws, and accounts for every line whatever the text', () => {
    void fc.assert(
      fc.property(text, (given) => {
        const { lines, problems, values } = decodeShef(given, { nowUtcMs })
        const split = given.split(/\r\n|\n|\r/)
        if (split.at(-1) === '') split.pop()
        expect(lines).toHaveLength(split.length)
        lines.forEach((outcome, index) => {
          const line = index + 1
          if (outcome === 'refused')
            expect(problems.some((one) => one.line === line && one.severity === 'refused')).toBe(true)
          if (outcome === 'values') expect(values.some((one) => one.line === line)).toBe(true)
          if (outcome === 'blank')
            expect(split[index]?.replaceAll('\u0001', '').replaceAll('\u0003', '').trim()).toBe('')
        })
        for (const one of [...problems, ...values]) {
          expect(one.column).toBeGreaterThan(0)
          expect(one.column).toBeLessThanOrEqual((split[one.line - 1]?.length ?? 0) + 1)
        }
        for (const one of values)
          expect(split[one.line - 1]?.slice(one.column - 1, one.column - 1 + one.text.length)).toBe(one.text)
      }),
      { numRuns: 5000, seed: 15 },
    )
  })
})
