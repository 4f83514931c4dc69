import type { Reading } from '@gaugewright/science'
import { describe, expect, it } from 'vitest'
import { decisionOf, gaugeOf, readingOf } from '../../../test/support/records.ts'
import type { Gauge } from '../../ports/ledger.ts'
import { acceptedRecord } from './acceptedRecord.ts'
import { buildRoll } from './buildRoll.ts'
import { decisionsInForce } from './decisionsInForce.ts'

const day = '2026-03-03'
const lateAfterMs = Date.parse('2026-03-03T09:00:00Z')

function rollOf(ask: {
  gauges: Gauge[]
  readings?: Reading[]
  decisions?: ReturnType<typeof decisionOf>[]
  absences?: { gaugeId: string; firstDay: string; lastDay: string }[]
}) {
  const { gauges, readings = [], decisions = [], absences = [] } = ask
  return buildRoll({
    day,
    gauges,
    readings,
    accepted: acceptedRecord(readings, decisions),
    decisions: decisionsInForce(decisions),
    absences: absences.map((absence) => ({ networkId: 'n', ...absence })),
    odds: new Map(),
    lateAfterMs,
  })
}

describe('buildRoll', () => {
  it('lists every gauge expected, by code; not yet opened and closed ones are not expected', () => {
    const roll = rollOf({
      gauges: [
        gaugeOf('b'),
        gaugeOf('a'),
        gaugeOf('c', { openedOn: '2026-03-04' }),
        gaugeOf('d', { closedOn: '2026-03-02' }),
        gaugeOf('e', { openedOn: '2026-03-03', closedOn: '2026-03-03' }),
      ],
    })
    expect(roll.map((row) => [row.code, row.answer])).toEqual([
      ['A', 'silent'],
      ['B', 'silent'],
      ['E', 'silent'],
    ])
  })

  it('a zero is a reading; silence is not a zero', () => {
    const roll = rollOf({ gauges: [gaugeOf('a'), gaugeOf('b')], readings: [readingOf('r1', 'a', day, 0)] })
    expect(roll[0]).toMatchObject({ answer: 'read', amountUm: 0, acceptedUm: 0, spanDays: 1 })
    expect(roll[1]).toMatchObject({ answer: 'silent', amountUm: null, acceptedUm: null, readingId: null })
  })

  it('a reading is late only when its interval ends after the accept window, not when it arrives late', () => {
    const roll = rollOf({
      gauges: [gaugeOf('a'), gaugeOf('b')],
      readings: [
        readingOf('r1', 'a', day, 254, { endsAtUtc: '2026-03-03T09:01:00Z' }),
        readingOf('r2', 'b', day, 508, { receivedAtUtc: '2026-03-05T20:00:00Z' }),
      ],
    })
    expect(roll.map((row) => row.answer)).toEqual(['read late', 'read'])
  })

  it('a total that ends on a later day leaves its earlier days open', () => {
    const total = readingOf('r1', 'a', '2026-03-05', 7112, { kind: 'multiday', firstDay: '2026-03-02' })
    expect(rollOf({ gauges: [gaugeOf('a')], readings: [total] })[0]?.answer).toBe('multi-day open')
  })

  it('away while the absence lasts, then a total is owed until a reading comes', () => {
    const away = rollOf({
      gauges: [gaugeOf('a'), gaugeOf('b'), gaugeOf('c')],
      absences: [
        { gaugeId: 'a', firstDay: '2026-03-01', lastDay: '2026-03-03' },
        { gaugeId: 'b', firstDay: '2026-02-26', lastDay: '2026-03-01' },
        { gaugeId: 'c', firstDay: '2026-02-26', lastDay: '2026-02-28' },
      ],
      readings: [readingOf('r1', 'c', '2026-03-02', 300)],
    })
    expect(away.map((row) => row.answer)).toEqual(['away', 'multi-day open', 'silent'])
  })

  it('shows the amount as typed beside the amount accepted after the decision', () => {
    const readings = [
      readingOf('r1', 'a', day, 40_000),
      readingOf('r2', 'b', day, 7000),
      readingOf('r3', 'c', day, 9000),
    ]
    const roll = rollOf({
      gauges: [gaugeOf('a'), gaugeOf('b'), gaugeOf('c')],
      readings,
      decisions: [
        decisionOf('d1', 'r1', 'amended', { amountUm: 4000, isTrace: false, firstDay: day, lastDay: day }),
        decisionOf('d2', 'r2', 'set aside'),
        decisionOf('d3', 'r3', 'amended', {
          amountUm: 9000,
          isTrace: false,
          firstDay: '2026-03-02',
          lastDay: '2026-03-02',
        }),
      ],
    })
    expect(roll.map((row) => [row.amountUm, row.acceptedUm])).toEqual([
      [40_000, 4000],
      [7000, null],
      [9000, null],
    ])
  })
})
