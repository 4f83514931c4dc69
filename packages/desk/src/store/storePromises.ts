/** What every ledger promises. Each adapter runs the same suite: `storePromises('memory', openMemory)`. */
import type { Decision, Reading } from '@gaugewright/science'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { Gauge, Ledger, NetworkSettings, RuleSetting } from '../ports/ledger.ts'

const network: NetworkSettings = {
  id: 'north',
  name: 'North basin',
  timeZone: 'Europe/Rome',
  readingTime: '07:00',
  acceptWindowMin: 120,
  unit: 'mm',
  language: 'en',
  docketBelow: 0.6,
}

function gauge(number: number, changes: Partial<Gauge> = {}): Gauge {
  return {
    id: `gauge-${number}`,
    networkId: 'north',
    code: `N${number}`,
    name: `Place ${number}`,
    latDeg: 45 + number / 100,
    lonDeg: 11 - number / 50,
    elevationM: number === 2 ? null : 100 * number,
    area: number === 3 ? 'Upper' : null,
    observerName: number === 1 ? 'A. Observer' : null,
    resolutionUm: number === 1 ? 254 : null,
    openedOn: number === 1 ? '1981-06-01' : null,
    closedOn: null,
    ...changes,
  }
}

function reading(
  id: string,
  gaugeNumber: number,
  day: string,
  amountUm: number,
  changes: Partial<Reading> = {},
): Reading {
  return {
    id,
    gaugeId: `gauge-${gaugeNumber}`,
    kind: 'daily',
    firstDay: day,
    lastDay: day,
    amountUm,
    isTrace: false,
    startsAtUtc: '2026-03-01T06:00:00Z',
    endsAtUtc: '2026-03-02T05:12:34.567Z',
    text: `${amountUm / 1000} mm`,
    unit: 'mm',
    remark: null,
    receivedAtUtc: '2026-03-02T06:00:00Z',
    door: 'desk',
    supersedes: null,
    ...changes,
  }
}

function decision(id: string, readingId: string, changes: Partial<Decision> = {}): Decision {
  return {
    id,
    readingId,
    verdict: 'stands',
    amended: null,
    by: { kind: 'person', name: 'B. Coordinator' },
    reason: 'storm seen',
    decidedAtUtc: '2026-03-02T07:00:00Z',
    undoes: null,
    ...changes,
  }
}

function ruleSetting(id: string, letStandAt: number | null, changes: Partial<RuleSetting> = {}): RuleSetting {
  return { id, letStandAt, by: 'B. Coordinator', why: `try ${id}`, setAtUtc: '2026-03-02T07:00:00Z', ...changes }
}

const ids = (readings: readonly { id: string }[]): string[] => readings.map(({ id }) => id)

/** The code of the LedgerError that a promise is rejected with. */
async function refusal(promise: Promise<unknown>): Promise<string> {
  try {
    await promise
  } catch (error) {
    return (error as { problem?: { code: string } }).problem?.code ?? String(error)
  }
  return 'not refused'
}

export function storePromises(
  name: string,
  open: () => Promise<{ ledger: Ledger; dispose: () => Promise<void> }>,
): void {
  describe(`the ${name} ledger`, () => {
    let ledger: Ledger
    let dispose: () => Promise<void>

    beforeEach(async () => {
      ;({ ledger, dispose } = await open())
      await ledger.saveNetwork(network)
      await ledger.saveGauges([gauge(1), gauge(2), gauge(3)])
    })
    afterEach(() => dispose())

    it('gives networks back as saved, and changes one saved again', async () => {
      await ledger.saveNetwork({ ...network, id: 'south', unit: 'in', language: 'es' })
      await ledger.saveNetwork({ ...network, name: 'North, renamed' })
      expect(await ledger.networks()).toEqual([
        { ...network, name: 'North, renamed' },
        { ...network, id: 'south', unit: 'in', language: 'es' },
      ])
    })

    it('gives gauges back as saved, in the order of their codes', async () => {
      expect(await ledger.gauges('north')).toEqual([gauge(1), gauge(2), gauge(3)])
      expect(await ledger.gauges('nowhere')).toEqual([])
    })

    it('finds one gauge by its id or by its code, and none of another network', async () => {
      await ledger.saveNetwork({ ...network, id: 'south' })
      await ledger.saveGauges([gauge(5, { id: 'five', code: 'V5' })])
      expect(await ledger.gauge('north', 'five')).toEqual(gauge(5, { id: 'five', code: 'V5' }))
      expect(await ledger.gauge('north', 'V5')).toEqual(gauge(5, { id: 'five', code: 'V5' }))
      expect(await ledger.gauge('north', 'v5')).toBeNull()
      expect(await ledger.gauge('south', 'five')).toBeNull()
      expect(await ledger.gauge('nowhere', 'V5')).toBeNull()
    })

    it('saves gauges by their code: added, changed and same are told apart, and an id once given stays', async () => {
      const saved = await ledger.saveGauges([gauge(1), gauge(2, { id: 'other', elevationM: 7 }), gauge(4)])
      expect(saved).toEqual({ added: 1, changed: 1, same: 1 })
      expect((await ledger.gauges('north'))[1]).toEqual(gauge(2, { elevationM: 7 }))
    })

    it('keeps the gauges of two networks apart, even with the same codes', async () => {
      await ledger.saveNetwork({ ...network, id: 'south' })
      await ledger.saveGauges([gauge(1, { networkId: 'south', id: 'south-1', name: 'Other' })])
      await ledger.appendReadings('south', [reading('s', 1, '2026-03-02', 900, { gaugeId: 'south-1' })])
      await ledger.appendReadings('north', [reading('n', 1, '2026-03-02', 800)])
      expect(ids(await ledger.readings('north', '2026-03-02', '2026-03-02'))).toEqual(['n'])
      expect(ids(await ledger.readings('south', '2026-03-02', '2026-03-02'))).toEqual(['s'])
      expect(await ledger.reading('north', 's')).toBeNull()
      expect((await ledger.gauges('north'))[0]?.name).toBe('Place 1')
    })

    it('gives a reading back exactly: amount, trace, text, unit, remark, interval, door', async () => {
      const total = reading('r2', 3, '2026-03-04', 0, {
        kind: 'multiday',
        firstDay: '2026-03-02',
        isTrace: true,
        text: ' tr ',
        unit: 'in',
        remark: 'was away; "dew"?',
        door: 'phone',
      })
      const daily = reading('r1', 1, '2026-03-02', 12_446)
      expect(await ledger.appendReadings('north', [total, daily])).toEqual({ stored: 2, already: 0, superseding: 0 })
      expect(await ledger.readings('north', '2026-03-01', '2026-03-31')).toEqual([daily, total])
      expect(await ledger.reading('north', 'r2')).toEqual({ reading: total, superseded: [] })
      expect(await ledger.reading('north', 'r3')).toBeNull()
    })

    it('keeps zero, trace and silence apart', async () => {
      await ledger.appendReadings('north', [
        reading('zero', 1, '2026-03-02', 0),
        reading('trace', 2, '2026-03-02', 0, { isTrace: true }),
      ])
      const day = await ledger.readings('north', '2026-03-02', '2026-03-02')
      expect(day.map(({ gaugeId, isTrace }) => [gaugeId, isTrace])).toEqual([
        ['gauge-1', false],
        ['gauge-2', true],
      ])
    })

    it('gives the readings whose last day lies in the range, by last day, then gauge', async () => {
      await ledger.appendReadings('north', [
        reading('c', 3, '2026-03-02', 300),
        reading('a', 1, '2026-03-03', 100),
        reading('b', 2, '2026-03-02', 200),
        reading('late', 1, '2026-03-05', 500, { firstDay: '2026-03-03', kind: 'multiday' }),
        reading('before', 1, '2026-03-01', 50),
      ])
      expect(ids(await ledger.readings('north', '2026-03-02', '2026-03-04'))).toEqual(['b', 'c', 'a'])
      const amounts = []
      for await (const amount of ledger.readingAmounts('north', '2026-03-02', '2026-03-05')) amounts.push(amount)
      expect(amounts).toEqual([
        {
          readingId: 'b',
          gaugeId: 'gauge-2',
          firstDay: '2026-03-02',
          lastDay: '2026-03-02',
          amountUm: 200,
          isTrace: false,
        },
        {
          readingId: 'c',
          gaugeId: 'gauge-3',
          firstDay: '2026-03-02',
          lastDay: '2026-03-02',
          amountUm: 300,
          isTrace: false,
        },
        {
          readingId: 'a',
          gaugeId: 'gauge-1',
          firstDay: '2026-03-03',
          lastDay: '2026-03-03',
          amountUm: 100,
          isTrace: false,
        },
        {
          readingId: 'late',
          gaugeId: 'gauge-1',
          firstDay: '2026-03-03',
          lastDay: '2026-03-05',
          amountUm: 500,
          isTrace: false,
        },
      ])
    })

    it('gives one gauge over the years, oldest first', async () => {
      await ledger.appendReadings('north', [
        reading('new', 1, '2026-03-02', 300),
        reading('old', 1, '1976-03-02', 100),
        reading('else', 2, '1999-03-02', 200),
      ])
      expect(ids(await ledger.readingsOfGauge('north', 'gauge-1', '1970-01-01', '2026-12-31'))).toEqual(['old', 'new'])
      expect(ids(await ledger.readingsOfGauge('north', 'gauge-1', '1977-01-01', '2026-12-31'))).toEqual(['new'])
      expect(await ledger.readingsOfGauge('north', 'gauge-9', '1970-01-01', '2026-12-31')).toEqual([])
    })

    it('lets other calls be awaited while amounts are streamed', async () => {
      await ledger.appendReadings('north', [reading('a', 1, '2026-03-01', 1), reading('b', 1, '2027-03-02', 2)])
      const seen: string[] = []
      for await (const { readingId } of ledger.readingAmounts('north', '2026-01-01', '2027-12-31')) {
        await ledger.saveCached('north', 'last', '1', readingId)
        seen.push((await ledger.cached('north', 'last'))?.body ?? '')
      }
      expect(seen).toEqual(['a', 'b'])
    })

    it('changes nothing when the same reading comes again, under another id and from another door', async () => {
      await ledger.appendReadings('north', [reading('r1', 1, '2026-03-02', 100)])
      const again = await ledger.appendReadings('north', [reading('r2', 1, '2026-03-02', 100, { door: 'import' })])
      expect(again).toEqual({ stored: 0, already: 1, superseding: 0 })
      expect(ids(await ledger.readings('north', '2026-03-02', '2026-03-02'))).toEqual(['r1'])
    })

    it('lets a newer amount for the same gauge and interval supersede, and keeps what was there', async () => {
      await ledger.appendReadings('north', [reading('r1', 1, '2026-03-02', 100), reading('x', 2, '2026-03-02', 5)])
      await ledger.appendReadings('north', [reading('r2', 1, '2026-03-02', 1_000)])
      const third = await ledger.appendReadings('north', [reading('r3', 1, '2026-03-02', 0, { isTrace: true })])
      expect(third).toEqual({ stored: 1, already: 0, superseding: 1 })
      expect(ids(await ledger.readings('north', '2026-03-02', '2026-03-02'))).toEqual(['r3', 'x'])
      const found = await ledger.reading('north', 'r3')
      expect(found?.reading.supersedes).toBe('r2')
      expect(ids(found?.superseded ?? [])).toEqual(['r2', 'r1'])
      expect((await ledger.reading('north', 'r1'))?.reading.amountUm).toBe(100)
      expect(await ledger.dayRange('north')).toEqual({
        firstDay: '2026-03-02',
        lastDay: '2026-03-02',
        readings: 2,
        stored: 4,
      })
    })

    it('takes a zero over a trace as a correction, not as the same', async () => {
      await ledger.appendReadings('north', [reading('r1', 1, '2026-03-02', 0, { isTrace: true })])
      expect((await ledger.appendReadings('north', [reading('r2', 1, '2026-03-02', 0)])).superseding).toBe(1)
    })

    it('keeps what an observer was asked back about at entry, and says nothing where nobody asked', async () => {
      const confirmed = { about: ['decimal', 'unit'], firstText: '4.00' } as const
      await ledger.appendReadings('north', [
        reading('r1', 1, '2026-03-02', 10_160, { confirmed }),
        reading('r2', 2, '2026-03-02', 254),
      ])
      const [first, second] = await ledger.readings('north', '2026-03-02', '2026-03-02')
      expect(first?.confirmed).toEqual(confirmed)
      expect(second).not.toHaveProperty('confirmed')
    })

    it('supersedes within one delivery too', async () => {
      const both = [reading('r1', 1, '2026-03-02', 100), reading('r2', 1, '2026-03-02', 200)]
      expect(await ledger.appendReadings('north', both)).toEqual({ stored: 2, already: 0, superseding: 1 })
      expect(ids(await ledger.readings('north', '2026-03-02', '2026-03-02'))).toEqual(['r2'])
    })

    it('lets a total over several days correct a daily reading that it names', async () => {
      await ledger.appendReadings('north', [reading('r1', 1, '2026-03-04', 300)])
      const total = reading('r2', 1, '2026-03-04', 300, { firstDay: '2026-03-02', kind: 'multiday', supersedes: 'r1' })
      expect((await ledger.appendReadings('north', [total])).superseding).toBe(1)
      expect(ids(await ledger.readings('north', '2026-03-01', '2026-03-31'))).toEqual(['r2'])
      // The first report again, from an old file: nothing comes back to life.
      expect((await ledger.appendReadings('north', [reading('r9', 1, '2026-03-04', 300)])).already).toBe(1)
      expect(ids(await ledger.readings('north', '2026-03-01', '2026-03-31'))).toEqual(['r2'])
    })

    it('refuses a correction of an unknown reading, of another gauge, or of one already corrected', async () => {
      await ledger.appendReadings('north', [reading('r1', 1, '2026-03-04', 300)])
      const total = (id: string, supersedes: string, gaugeNumber: number, firstDay: string): Reading =>
        reading(id, gaugeNumber, '2026-03-04', 300, { firstDay, kind: 'multiday', supersedes })
      expect(await refusal(ledger.appendReadings('north', [total('a', 'zz', 1, '2026-03-03')]))).toBe('READING_UNKNOWN')
      expect(await refusal(ledger.appendReadings('north', [total('b', 'r1', 2, '2026-03-03')]))).toBe('READING_UNKNOWN')
      await ledger.appendReadings('north', [total('c', 'r1', 1, '2026-03-03')])
      expect(await refusal(ledger.appendReadings('north', [total('d', 'r1', 1, '2026-03-02')]))).toBe(
        'ALREADY_SUPERSEDED',
      )
      expect(ids(await ledger.readings('north', '2026-03-01', '2026-03-31'))).toEqual(['c'])
    })

    it.each([
      ['of an unknown gauge', { gaugeId: 'gauge-9' }, 'LEDGER_GAUGE_UNKNOWN'],
      ['with a fraction of a micrometre', { amountUm: 0.5 }, 'READING_NOT_VALID'],
      ['below zero', { amountUm: -1 }, 'READING_NOT_VALID'],
      ['that is a trace of something', { isTrace: true }, 'READING_NOT_VALID'],
      ['that ends before it begins', { firstDay: '2026-03-03' }, 'READING_NOT_VALID'],
      ['on a day that does not exist', { firstDay: '2026-02-30', lastDay: '2026-02-30' }, 'READING_NOT_VALID'],
      ['at an instant without a zone', { endsAtUtc: '2026-03-02T05:00:00' }, 'READING_NOT_VALID'],
      ['under an id that is taken', { id: 'first' }, 'ID_TAKEN'],
    ])('refuses a reading %s, and keeps nothing of its delivery', async (_, changes, code) => {
      await ledger.appendReadings('north', [reading('first', 2, '2026-03-01', 1)])
      const delivery = [reading('good', 3, '2026-03-02', 100), reading('bad', 1, '2026-03-02', 100, changes)]
      expect(await refusal(ledger.appendReadings('north', delivery))).toBe(code)
      expect(ids(await ledger.readings('north', '0001-01-01', '9999-12-31'))).toEqual(['first'])
    })

    it('refuses readings of an unknown network', async () => {
      expect(await refusal(ledger.appendReadings('nowhere', [reading('r', 1, '2026-03-02', 1)]))).toBe(
        'NETWORK_UNKNOWN',
      )
    })

    it('shows nothing of a load before it is committed, and all of it after', async () => {
      const load = await ledger.load('east')
      await load.saveNetwork({ ...network, id: 'east' })
      await load.saveGauges([gauge(7, { networkId: 'east' })])
      expect(await load.appendReadings([reading('r1', 7, '2026-03-02', 100)])).toEqual({
        stored: 1,
        already: 0,
        superseding: 0,
      })
      await load.appendReadings([reading('r2', 7, '2026-03-03', 200)])
      expect(ids(await ledger.networks())).toEqual(['north'])
      expect(await ledger.readings('east', '2026-03-01', '2026-03-31')).toEqual([])
      await load.commit()
      expect(ids(await ledger.networks())).toEqual(['north', 'east'])
      expect(await ledger.gauges('east')).toEqual([gauge(7, { networkId: 'east' })])
      expect(ids(await ledger.readings('east', '2026-03-01', '2026-03-31'))).toEqual(['r1', 'r2'])
    })

    it('keeps nothing of a load that is rolled back', async () => {
      const load = await ledger.load('north')
      await load.saveGauges([gauge(1, { name: 'Changed' }), gauge(8)])
      await load.appendReadings([reading('r1', 8, '2026-03-02', 100)])
      await load.rollback()
      expect(await ledger.gauges('north')).toEqual([gauge(1), gauge(2), gauge(3)])
      expect(await ledger.dayRange('north')).toBeNull()
    })

    it('counts what is current, delivery by delivery: corrections and repeats add none', async () => {
      const load = await ledger.load('north')
      await load.appendReadings([reading('a', 1, '2026-03-02', 100), reading('b', 2, '2026-03-02', 200)])
      await load.appendReadings([reading('c', 1, '2026-03-02', 300), reading('d', 1, '2026-03-03', 400)])
      expect((await load.appendReadings([reading('e', 2, '2026-03-02', 200)])).already).toBe(1)
      await load.commit()
      const dropped = await ledger.load('north')
      await dropped.appendReadings([reading('f', 2, '2026-03-04', 500)])
      await dropped.rollback()
      expect(await ledger.dayRange('north')).toMatchObject({ readings: 3, stored: 4 })
    })

    it('makes writers take turns: what waits for a load comes after it', async () => {
      const load = await ledger.load('north')
      await load.appendReadings([reading('r1', 1, '2026-03-02', 100)])
      const waiting = ledger.appendReadings('north', [reading('r2', 1, '2026-03-02', 200)])
      await load.commit()
      expect((await waiting).superseding).toBe(1)
      expect(ids(await ledger.readings('north', '2026-03-02', '2026-03-02'))).toEqual(['r2'])
    })

    it('knows the first and last day with a reading, and how many are current', async () => {
      expect(await ledger.dayRange('north')).toBeNull()
      await ledger.appendReadings('north', [reading('a', 1, '1999-12-31', 1), reading('b', 2, '2026-03-02', 2)])
      expect(await ledger.dayRange('north')).toEqual({
        firstDay: '1999-12-31',
        lastDay: '2026-03-02',
        readings: 2,
        stored: 2,
      })
      expect(await ledger.dayRange('nowhere')).toBeNull()
    })

    it('gives decisions back exactly, in the order in which they came, undone ones included', async () => {
      await ledger.appendReadings('north', [reading('r1', 1, '2026-03-02', 100), reading('r2', 2, '2026-03-03', 200)])
      const amended = { amountUm: 1_000, isTrace: false, firstDay: '2026-03-01', lastDay: '2026-03-02' }
      const first = decision('d2', 'r1', { verdict: 'amended', amended, by: { kind: 'rule', rule: 'let stand' } })
      const undone = decision('d1', 'r1', { verdict: 'amended', undoes: 'd2', reason: '' })
      const other = decision('d3', 'r2', { verdict: 'set aside', mistake: 'first-fill-lost' })
      for (const each of [first, undone, other]) await ledger.appendDecision('north', each)
      expect(await ledger.decisions('north', '2026-03-01', '2026-03-31')).toEqual([first, undone, other])
      expect(await ledger.decisions('north', '2026-03-03', '2026-03-03')).toEqual([other])
      expect(await ledger.decisions('nowhere', '2026-03-03', '2026-03-03')).toEqual([])
    })

    it('leaves a decision where it was made when the reading is superseded', async () => {
      await ledger.appendReadings('north', [reading('r1', 1, '2026-03-02', 100)])
      await ledger.appendDecision('north', decision('d1', 'r1'))
      await ledger.appendReadings('north', [reading('r2', 1, '2026-03-02', 200)])
      expect(ids(await ledger.decisions('north', '2026-03-02', '2026-03-02'))).toEqual(['d1'])
    })

    it('refuses a decision about an unknown reading, and a second one under the same id', async () => {
      await ledger.appendReadings('north', [reading('r1', 1, '2026-03-02', 100)])
      expect(await refusal(ledger.appendDecision('north', decision('d1', 'zz')))).toBe('READING_UNKNOWN')
      await ledger.appendDecision('north', decision('d1', 'r1'))
      expect(await refusal(ledger.appendDecision('north', decision('d1', 'r1')))).toBe('ID_TAKEN')
      expect(ids(await ledger.decisions('north', '2026-03-02', '2026-03-02'))).toEqual(['d1'])
    })

    it('takes many decisions whole or not at all', async () => {
      await ledger.appendReadings('north', [reading('r1', 1, '2026-03-02', 100), reading('r2', 2, '2026-03-03', 200)])
      const many = [decision('d2', 'r2'), decision('d1', 'r1')]
      await ledger.appendDecisions('north', many)
      await ledger.appendDecisions('north', [])
      expect(await ledger.decisions('north', '2026-03-01', '2026-03-31')).toEqual(many)
      expect(await refusal(ledger.appendDecisions('north', [decision('d3', 'r1'), decision('d4', 'zz')]))).toBe(
        'READING_UNKNOWN',
      )
      expect(await refusal(ledger.appendDecisions('north', [decision('d5', 'r1'), decision('d5', 'r2')]))).toBe(
        'ID_TAKEN',
      )
      expect(await ledger.decisions('north', '2026-03-01', '2026-03-31')).toEqual(many)
    })

    it('keeps every setting of the rule, in the order in which they came, for each network alone', async () => {
      expect(await ledger.ruleSettings('north')).toEqual([])
      await ledger.saveNetwork({ ...network, id: 'south' })
      const first = ruleSetting('s2', 0.9875, { setAtUtc: '2026-03-05T07:00:00Z' })
      const off = ruleSetting('s1', null, { by: 'C. Colleague' })
      const again = ruleSetting('s3', 0.9875)
      for (const setting of [first, off, again]) await ledger.appendRuleSetting('north', setting)
      await ledger.appendRuleSetting('south', ruleSetting('t1', 0.75))
      expect(await ledger.ruleSettings('north')).toEqual([first, off, again])
      expect(ids(await ledger.ruleSettings('south'))).toEqual(['t1'])
      expect(await ledger.ruleSettings('nowhere')).toEqual([])
    })

    it('refuses a setting of the rule under an id that is taken, for no network, or above all odds', async () => {
      await ledger.appendRuleSetting('north', ruleSetting('s1', 0.98))
      expect(await refusal(ledger.appendRuleSetting('north', ruleSetting('s1', 0.97)))).toBe('ID_TAKEN')
      expect(await refusal(ledger.appendRuleSetting('nowhere', ruleSetting('s2', 0.97)))).toBe('NETWORK_UNKNOWN')
      for (const letStandAt of [1.2, 0, -0.5, Number.NaN]) {
        expect(await refusal(ledger.appendRuleSetting('north', ruleSetting('s3', letStandAt)))).toBe('RULE_NOT_VALID')
      }
      expect(ids(await ledger.ruleSettings('north'))).toEqual(['s1'])
    })

    it('takes a forgotten person out of what they decided and set, and nothing else', async () => {
      await ledger.appendReadings('north', [reading('r1', 1, '2026-03-02', 100)])
      const own = decision('d1', 'r1', { by: { kind: 'person', name: 'C. Colleague', personId: 'p1' } })
      const others = decision('d2', 'r1', { by: { kind: 'person', name: 'C. Colleague', personId: 'p2' } })
      const unsigned = decision('d3', 'r1', { by: { kind: 'person', name: 'C. Colleague' } })
      await ledger.appendDecisions('north', [own, others, unsigned])
      await ledger.appendRuleSetting('north', ruleSetting('s1', 0.98, { by: 'C. Colleague', byPersonId: 'p1' }))
      expect(await ledger.decisionsBy('p1')).toEqual([own])
      await ledger.forgetPerson('p1')
      expect(await ledger.decisions('north', '2026-03-02', '2026-03-02')).toEqual([
        { ...own, by: { kind: 'person', name: '' } },
        others,
        unsigned,
      ])
      expect(await ledger.ruleSettings('north')).toEqual([ruleSetting('s1', 0.98, { by: '' })])
      expect(await ledger.decisionsBy('p1')).toEqual([])
    })

    it('keeps a delivery with its readings, once, or neither', async () => {
      const delivery = {
        key: 'file abc',
        bodyHash: 'a'.repeat(64),
        sender: 'folder',
        name: 'morning.csv',
        receivedAtUtc: '2026-03-29T06:00:00Z',
        answer: `{"stored":1,"note":"${'é'.repeat(2000)}"}`,
      }
      const undone = await ledger.load('north')
      await undone.keepDelivery(delivery)
      await undone.rollback()
      expect(await ledger.delivery('north', 'file abc')).toBeNull()
      const load = await ledger.load('north')
      await load.keepDelivery(delivery)
      await load.commit()
      expect(await ledger.delivery('north', 'file abc')).toEqual(delivery)
      expect(await ledger.delivery('north', 'file abd')).toBeNull()
      const second = await ledger.load('north')
      expect(await refusal(second.keepDelivery({ ...delivery, name: 'again.csv' }))).toBe('ID_TAKEN')
      await second.rollback()
    })

    it('gives the absences that touch a range of days', async () => {
      const away = { networkId: 'north', gaugeId: 'gauge-2', firstDay: '2026-03-02', lastDay: '2026-03-10' }
      await ledger.saveAbsence(away)
      await ledger.saveAbsence(away)
      await ledger.saveAbsence({ ...away, gaugeId: 'gauge-1', firstDay: '2026-05-01', lastDay: '2026-05-01' })
      expect(await ledger.absences('north', '2026-03-10', '2026-04-30')).toEqual([away])
      expect(await ledger.absences('north', '2026-03-11', '2026-04-30')).toEqual([])
      expect(await refusal(ledger.saveAbsence({ ...away, gaugeId: 'gauge-9' }))).toBe('LEDGER_GAUGE_UNKNOWN')
    })

    it('gives map layers back as saved, one for each kind and name', async () => {
      const layer = {
        networkId: 'north',
        name: 'counties',
        kind: 'area' as const,
        geojson: { type: 'FeatureCollection', features: [] },
      }
      await ledger.saveLayer(layer)
      await ledger.saveLayer({ ...layer, kind: 'river', name: 'Main', geojson: [1, { a: null }] })
      await ledger.saveLayer({ ...layer, geojson: { type: 'Polygon' } })
      expect(await ledger.layers('north')).toEqual([
        { ...layer, geojson: { type: 'Polygon' } },
        { ...layer, kind: 'river', name: 'Main', geojson: [1, { a: null }] },
      ])
    })

    it('keeps the newest of what is cached under a key', async () => {
      expect(await ledger.cached('north', 'model')).toBeNull()
      await ledger.saveCached('north', 'model', 'v1', 'one')
      await ledger.saveCached('north', 'model', 'v2', 'two')
      expect(await ledger.cached('north', 'model')).toEqual({ version: 'v2', body: 'two' })
      expect(await ledger.cached('north', 'other')).toBeNull()
    })
  })
}
