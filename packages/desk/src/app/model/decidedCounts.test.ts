import { describe, expect, it } from 'vitest'
import { decisionOf, gaugeOf, readingOf } from '../../../test/support/records.ts'
import { smallNetwork } from '../../../test/support/smallNetwork.ts'
import type { Ledger } from '../../ports/ledger.ts'
import { openMemoryLedger } from '../../store/memory/memoryLedger.ts'
import { type DecidedCountsAsk, decidedCounts } from './decidedCounts.ts'

const day = (dayOfMonth: number, month = '03'): string => `2026-${month}-${String(dayOfMonth).padStart(2, '0')}`

/** Two gauges read each day of February and March; ids like `a-2026-03-05`. */
async function openRecord(): Promise<Ledger> {
  const ledger = openMemoryLedger()
  await ledger.saveNetwork({ ...smallNetwork(1).network, id: 'n' })
  await ledger.saveGauges([gaugeOf('a'), gaugeOf('b')])
  const days = [...Array(28).keys()].map((d) => day(d + 1, '02')).concat([...Array(31).keys()].map((d) => day(d + 1)))
  const readings = days.flatMap((iso, index) => [
    readingOf(`a-${iso}`, 'a', iso, 1000 + index),
    readingOf(`b-${iso}`, 'b', iso, 2000 + index),
  ])
  await ledger.appendReadings('n', readings)
  return ledger
}

const ask: DecidedCountsAsk = {
  networkId: 'n',
  indexOf: new Map([
    ['a', 0],
    ['b', 1],
  ]),
  firstDay: day(1, '02'),
  untilDay: day(31),
}
const amended = (iso: string, amountUm: number) => ({ amountUm, isTrace: false, firstDay: iso, lastDay: iso })

describe('decidedCounts', () => {
  it('is nothing where no person decided; a rule that lets readings stand is not a person', async () => {
    const ledger = await openRecord()
    expect(await decidedCounts(ledger, ask)).toBeNull()
    await ledger.appendDecision(
      'n',
      decisionOf('d1', `a-${day(5)}`, 'stands', null, { by: { kind: 'rule', rule: 'let stand at 0.98' } }),
    )
    expect(await decidedCounts(ledger, ask)).toBeNull()
  })

  it('counts mistaken and standing readings by gauge, and as passed those of the days about them only', async () => {
    const ledger = await openRecord()
    await ledger.appendDecision(
      'n',
      decisionOf('d1', `a-${day(10)}`, 'amended', amended(day(10), 77), { mistake: 'decimal' }),
    )
    await ledger.appendDecision('n', decisionOf('d2', `b-${day(10)}`, 'set aside', null, { mistake: 'wetted' }))
    await ledger.appendDecision('n', decisionOf('d3', `b-${day(11)}`, 'stands', null, { mistake: 'other' }))
    await ledger.appendDecision('n', decisionOf('d4', `b-${day(12)}`, 'asked', null, { mistake: 'unit' }))
    const counts = await decidedCounts(ledger, ask)
    expect([...(counts?.mistaken ?? [])]).toEqual([1, 1])
    expect([...(counts?.standing ?? [])]).toEqual([0, 1])
    // 3 to 19 March: seventeen days, without the one decided at a, and without the three at b.
    expect([...(counts?.passed ?? [])]).toEqual([16, 14])
    expect(counts?.named).toEqual({ decimal: 1, wetted: 1 })
  })

  it('follows what is in force: a decision taken back counts no more, amending to the same amount is standing', async () => {
    const ledger = await openRecord()
    await ledger.appendDecision('n', decisionOf('d1', `a-${day(10)}`, 'set aside', null, { mistake: 'other' }))
    await ledger.appendDecision('n', decisionOf('d2', `a-${day(10)}`, 'set aside', null, { undoes: 'd1' }))
    expect(await decidedCounts(ledger, ask)).toBeNull()
    const [reading] = await ledger.readingsOfGauge('n', 'a', day(10), day(10))
    await ledger.appendDecision(
      'n',
      decisionOf('d3', `a-${day(10)}`, 'amended', amended(day(10), reading?.amountUm ?? 0)),
    )
    const counts = await decidedCounts(ledger, ask)
    expect([...(counts?.mistaken ?? []), ...(counts?.standing ?? [])]).toEqual([0, 0, 1, 0])
  })

  it('a date that was wrong for days on end, or a silent total, is one mistake; two slips of the point are two', async () => {
    const ledger = await openRecord()
    for (const dayOfMonth of [4, 5, 6, 20]) {
      await ledger.appendDecision(
        'n',
        decisionOf(`a${dayOfMonth}`, `a-${day(dayOfMonth)}`, 'amended', amended(day(dayOfMonth), 5), {
          mistake: 'day',
        }),
      )
      await ledger.appendDecision(
        'n',
        decisionOf(`b${dayOfMonth}`, `b-${day(dayOfMonth)}`, 'amended', amended(day(dayOfMonth), 5), {
          mistake: 'decimal',
        }),
      )
    }
    const counts = await decidedCounts(ledger, ask)
    expect([...(counts?.mistaken ?? [])]).toEqual([2, 4])
    expect(counts?.named).toEqual({ day: 2, decimal: 4 })
  })

  it('leaves out what is newer than asked for', async () => {
    const ledger = await openRecord()
    await ledger.appendDecision('n', decisionOf('d1', `a-${day(30)}`, 'set aside', null, { mistake: 'other' }))
    expect(await decidedCounts(ledger, { ...ask, untilDay: day(29) })).toBeNull()
    expect((await decidedCounts(ledger, ask))?.mistaken[0]).toBe(1)
  })
})
