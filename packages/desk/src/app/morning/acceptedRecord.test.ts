import { epochDayFromIso } from '@gaugewright/science'
import { describe, expect, it } from 'vitest'
import { decisionOf, readingOf } from '../../../test/support/records.ts'
import { acceptedRecord } from './acceptedRecord.ts'
import { decisionsInForce } from './decisionsInForce.ts'
import { morningTable } from './morningTable.ts'

const undoOf = (id: string, readingId: string, undoes: string) => decisionOf(id, readingId, 'stands', null, { undoes })

describe('decisionsInForce', () => {
  it('the latest decision holds; undoing it brings back the one before; undoing all leaves none', () => {
    const first = decisionOf('d1', 'r', 'asked')
    const second = decisionOf('d2', 'r', 'set aside')
    expect(decisionsInForce([first, second]).get('r')?.id).toBe('d2')
    expect(decisionsInForce([first, second, undoOf('u1', 'r', 'd2')]).get('r')?.id).toBe('d1')
    expect(decisionsInForce([first, second, undoOf('u1', 'r', 'd2'), undoOf('u2', 'r', 'd1')]).has('r')).toBe(false)
  })
})

describe('acceptedRecord', () => {
  const reading = readingOf('r', 'a', '2026-03-03', 40_000)

  it('keeps a reading as reported until a person settles it; asking settles nothing', () => {
    for (const decisions of [[], [decisionOf('d', 'r', 'asked')]]) {
      expect(acceptedRecord([reading], decisions)[0]).toMatchObject({ amountUm: 40_000, settled: false })
    }
    expect(acceptedRecord([reading], [decisionOf('d', 'r', 'stands')])[0]).toMatchObject({ settled: true })
  })

  it('a rule lets a reading stand without settling it, so that running the rule twice changes nothing', () => {
    const byRule = decisionOf('d', 'r', 'stands', null, { by: { kind: 'rule', rule: 'let stand at 0.98' } })
    expect(acceptedRecord([reading], [byRule])[0]).toMatchObject({ settled: false })
  })

  it('an amended reading counts with its new amount and days; a set-aside one does not count', () => {
    const amended = decisionOf('d', 'r', 'amended', {
      amountUm: 4000,
      isTrace: false,
      firstDay: '2026-03-02',
      lastDay: '2026-03-03',
    })
    expect(acceptedRecord([reading], [amended])[0]).toMatchObject({
      amountUm: 4000,
      firstDay: '2026-03-02',
      settled: true,
    })
    expect(acceptedRecord([reading], [decisionOf('d', 'r', 'set aside')])).toEqual([])
  })
})

describe('morningTable', () => {
  const indexOf = new Map([
    ['b', 0],
    ['a', 1],
  ])
  const firstDay = epochDayFromIso('2026-03-01')

  it('puts each reading in the row of its last day and the column of its gauge, in mm', () => {
    const accepted = acceptedRecord(
      [
        readingOf('r1', 'a', '2026-03-02', 2540),
        readingOf('r2', 'b', '2026-03-03', 0, { isTrace: true }),
        readingOf('r3', 'unknown', '2026-03-02', 100),
        readingOf('r4', 'a', '2026-03-09', 100),
      ],
      [],
    )
    const { table, readingIds } = morningTable(accepted, indexOf, firstDay, 4)
    expect(table.amountMm[1 * 2 + 1]).toBe(2.54)
    expect(table.spanDays[1 * 2 + 1]).toBe(1)
    expect(table.isTrace[2 * 2 + 0]).toBe(1)
    expect(readingIds[2 * 2 + 0]).toBe('r2')
    expect([...table.spanDays].filter((span) => span > 0)).toHaveLength(2)
    expect(table.settled[1 * 2 + 1]).toBeNaN()
  })

  it('zeros that a settled total covers are left to the total, unless a person settled them too', () => {
    const readings = [
      readingOf('r1', 'a', '2026-03-02', 0),
      readingOf('r2', 'a', '2026-03-03', 0),
      readingOf('r3', 'a', '2026-03-04', 9000),
    ]
    const total = decisionOf('d', 'r3', 'amended', {
      amountUm: 9000,
      isTrace: false,
      firstDay: '2026-03-02',
      lastDay: '2026-03-04',
    })
    const spans = (decisions: Parameters<typeof acceptedRecord>[1]) => {
      const { table } = morningTable(acceptedRecord(readings, decisions), indexOf, firstDay, 4)
      return [1, 2, 3].map((row) => table.spanDays[row * 2 + 1])
    }
    expect(spans([])).toEqual([1, 1, 1])
    expect(spans([total])).toEqual([0, 0, 3])
    expect(spans([total, decisionOf('e', 'r1', 'stands')])).toEqual([1, 0, 3])
  })

  it('a daily reading is kept before a total that ends on the same day', () => {
    const daily = readingOf('r1', 'a', '2026-03-03', 5000)
    const total = readingOf('r2', 'a', '2026-03-03', 9000, { kind: 'multiday', firstDay: '2026-03-02' })
    for (const readings of [
      [daily, total],
      [total, daily],
    ]) {
      const { table } = morningTable(acceptedRecord(readings, []), indexOf, firstDay, 4)
      expect(table.amountMm[2 * 2 + 1]).toBe(5)
    }
  })
})
