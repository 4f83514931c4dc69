/** What every store of urgent reports promises. Each adapter runs the same suite. */
import { type FileUrgentInput, fileUrgentAskSchema } from '@gaugewright/contract'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { NewFiling, NewUrgentEvent, Urgent, UrgentEvent } from '../ports/urgent.ts'

export interface OpenUrgent {
  urgent: Urgent
  /** Closes and opens again: what was acknowledged is there. Absent where nothing outlives the process. */
  reopen?: () => Promise<Urgent>
  dispose: () => Promise<void>
}

const idOf = (number: number): string => `00000000-0000-4000-8000-${String(number).padStart(12, '0')}`

function filing(number: number, change: Partial<NewFiling> = {}, seen: Partial<FileUrgentInput> = {}): NewFiling {
  const report = fileUrgentAskSchema.parse({
    id: idOf(number),
    where: { kind: 'place', latDeg: 44.1 + number / 100, lonDeg: 8.2, name: null },
    seenAtUtc: `2026-05-31T14:${String(number % 60).padStart(2, '0')}:00Z`,
    sentAtUtc: '2026-05-31T14:59:00Z',
    by: `Observer ${number}`,
    seen: { kind: 'hail', largest: { diameterMm: 20 + number, by: 'ruler' } },
    ...seen,
  })
  return {
    id: report.id,
    reportId: report.id,
    atUtc: '2026-05-31T15:00:00.125Z',
    by: report.by,
    byPersonId: number === 3 ? 'person-3' : null,
    what: 'filed',
    report,
    ...change,
  }
}

function act(id: string, report: number, change: Partial<NewUrgentEvent> = {}): NewUrgentEvent {
  const happened = { id, reportId: idOf(report), atUtc: '2026-05-31T15:01:00Z', by: 'B. Coordinator', byPersonId: null }
  return { ...happened, what: 'seen', ...change } as NewUrgentEvent
}

async function refusal(promise: Promise<unknown>): Promise<string> {
  try {
    await promise
  } catch (error) {
    return (error as { problem?: { code: string } }).problem?.code ?? String(error)
  }
  return 'not refused'
}

/** @param open a store with the networks `north` and `south` */
export function urgentPromises(name: string, open: () => Promise<OpenUrgent>): void {
  describe(`the ${name} store of urgent reports`, () => {
    let opened: OpenUrgent
    let urgent: Urgent
    beforeEach(async () => {
      opened = await open()
      urgent = opened.urgent
    })
    afterEach(() => opened.dispose())

    it('gives a report back as it was filed, under number 1', async () => {
      const { event, already } = await urgent.file('north', filing(3))
      expect(already).toBe(false)
      expect(event).toEqual({ ...filing(3), number: 1 })
      expect(await urgent.eventsOf('north', idOf(3))).toEqual([event])
      expect(await urgent.lastNumber('north')).toBe(1)
    })

    it('the same report again is there already, though sent at another instant; another content is refused', async () => {
      const first = await urgent.file('north', filing(1))
      const again = await urgent.file('north', filing(1, {}, { sentAtUtc: '2026-05-31T15:20:00Z' }))
      expect(again).toEqual({ event: first.event, already: true })
      const other = filing(1, {}, { remark: 'windows broken' })
      expect(await refusal(urgent.file('north', other))).toBe('URGENT_ID_TAKEN')
      expect(await urgent.lastNumber('north')).toBe(1)
    })

    it('numbers events without a gap and keeps networks apart', async () => {
      for (const number of [1, 2, 4]) await urgent.file('north', filing(number))
      await urgent.file('south', filing(9))
      await urgent.append('north', act('e1', 2))
      expect((await urgent.eventsAfter('north', 0, 100)).map(({ number }) => number)).toEqual([1, 2, 3, 4])
      expect((await urgent.eventsAfter('north', 1, 2)).map(({ id }) => id)).toEqual([idOf(2), idOf(4)])
      expect((await urgent.eventsAfter('south', 0, 100)).map(({ id }) => id)).toEqual([idOf(9)])
      expect(await urgent.lastNumber('nowhere')).toBe(0)
    })

    it('a hundred at once are each there once, numbered 1 to 100', async () => {
      const numbers = Array.from({ length: 100 }, (_, index) => index + 1)
      await Promise.all([...numbers, ...numbers].map((number) => urgent.file('north', filing(number))))
      const events = await urgent.eventsAfter('north', 0, 1000)
      expect(events.map(({ number }) => number)).toEqual(numbers)
      expect(new Set(events.map(({ id }) => id)).size).toBe(100)
    })

    it('one that is refused does no harm to those that come with it', async () => {
      await urgent.file('north', filing(1))
      const refused = filing(1, {}, { remark: 'another content' })
      const outcomes = await Promise.allSettled(
        [2, 1, 4].map((n) => urgent.file('north', n === 1 ? refused : filing(n))),
      )
      expect(outcomes.map(({ status }) => status)).toEqual(['fulfilled', 'rejected', 'fulfilled'])
      expect((await urgent.eventsAfter('north', 0, 10)).map(({ id }) => id)).toEqual([1, 2, 4].map(idOf))
    })

    it('gives every kind of event back whole', async () => {
      await urgent.file('north', filing(1))
      const passed = { form: 'storm report', way: 'file', to: 'watched', text: 'A\nB', outgoingId: 'o1' } as const
      const events = [
        act('e1', 1),
        act('e2', 1, { what: 'passed on', ...passed }),
        act('e3', 1, { what: 'closed', why: 'over' }),
        act('e4', 1, { what: 'undone', target: 'e3' }),
      ]
      for (const event of events) await urgent.append('north', event)
      const kept = await urgent.eventsOf('north', idOf(1))
      expect(await urgent.event('north', 'e2')).toEqual(kept[2])
      expect(await urgent.event('south', 'e2')).toBeNull()
      expect(kept.slice(1)).toEqual(events.map((event, index) => ({ ...event, number: index + 2 })))
    })

    it('refuses an event of an unknown report, an id twice and an unknown network', async () => {
      await urgent.file('north', filing(1))
      await urgent.append('north', act('e1', 1))
      expect(await refusal(urgent.append('north', act('e2', 7)))).toBe('URGENT_UNKNOWN')
      expect(await refusal(urgent.append('north', act('e1', 1)))).toBe('ID_TAKEN')
      expect(await urgent.lastNumber('north')).toBe(2)
    })

    it('since an instant: reports filed then, with all their events, and older ones that nobody has looked at', async () => {
      const old = { atUtc: '2026-05-20T10:00:00Z' }
      for (const number of [1, 2, 4]) await urgent.file('north', filing(number, old))
      await urgent.file('north', filing(5))
      await urgent.append('north', act('e1', 1))
      await urgent.append('north', act('e2', 2))
      await urgent.append('north', act('e3', 2, { what: 'undone', target: 'e2' }))
      const told = async (since: string) => new Set((await urgent.eventsSince('north', since)).map((e) => e.reportId))
      expect(await told('2026-05-31T15:00:00.125Z')).toEqual(new Set([idOf(2), idOf(4), idOf(5)]))
      expect(await told('2026-05-31T15:00:01Z')).toEqual(new Set([idOf(2), idOf(4), idOf(5)]))
      await urgent.append('north', act('e4', 5))
      expect(await told('2026-05-31T15:00:01Z')).toEqual(new Set([idOf(2), idOf(4)]))
      expect(await told('2026-05-20T10:00:00Z')).toEqual(new Set([1, 2, 4, 5].map(idOf)))
      const events = await urgent.eventsSince('north', '2026-05-31T16:00:00Z')
      expect(events.map(({ number }) => number)).toEqual([2, 3, 6, 7])
    })

    it('what is told later about a report belongs to it', async () => {
      await urgent.file('north', filing(1))
      await urgent.file('north', filing(2, { reportId: idOf(1) }, { updates: idOf(1) }))
      expect((await urgent.eventsOf('north', idOf(1))).map(({ id }) => id)).toEqual([idOf(1), idOf(2)])
      expect(await urgent.eventsOf('north', idOf(2))).toEqual([])
    })

    it('tells those who listen, once for each event, until they stop; nothing for what was there already', async () => {
      const heard: UrgentEvent[] = []
      const stop = urgent.listen((networkId, event) => {
        if (networkId === 'north') heard.push(event)
        throw new Error('a listener that fails')
      })
      await urgent.file('north', filing(1))
      await urgent.file('north', filing(1))
      await urgent.append('north', act('e1', 1))
      stop()
      await urgent.append('north', act('e2', 1))
      expect(heard.map(({ id }) => id)).toEqual([idOf(1), 'e1'])
    })

    it('keeps every setting, the last in force', async () => {
      expect(await urgent.settings('north')).toEqual([])
      const settings = { severeHailMm: 20 } as never
      const newer = { severeHailMm: 25.4 } as never
      await urgent.appendSettings('north', { settings, by: 'A', atUtc: '2026-05-31T15:00:00Z' })
      await urgent.appendSettings('north', { settings: newer, by: 'B', atUtc: '2026-05-31T14:00:00Z' })
      expect(await urgent.settings('north')).toEqual([
        { settings, by: 'A', atUtc: '2026-05-31T15:00:00Z' },
        { settings: newer, by: 'B', atUtc: '2026-05-31T14:00:00Z' },
      ])
    })

    it('a forgotten person leaves no name behind, and the report stays', async () => {
      await urgent.file('north', filing(3))
      await urgent.file('north', filing(4))
      expect((await urgent.byPerson('person-3')).map(({ id }) => id)).toEqual([idOf(3)])
      expect(await urgent.forgetPerson('person-3')).toBe(1)
      const [event] = await urgent.eventsOf('north', idOf(3))
      expect(event).toMatchObject({
        by: '',
        byPersonId: null,
        report: { by: '', seen: { largest: { diameterMm: 23 } } },
      })
      expect(JSON.stringify(await urgent.eventsAfter('north', 0, 10))).not.toContain('Observer 3')
      expect(await urgent.forgetPerson('person-3')).toBe(0)
      // Sent again by the phone it is still the same report.
      expect((await urgent.file('north', filing(3))).already).toBe(true)
    })

    it('what was acknowledged is there after closing and opening again', async () => {
      if (opened.reopen === undefined) return
      const { event } = await urgent.file('north', filing(1))
      urgent = await opened.reopen()
      expect(await urgent.eventsOf('north', idOf(1))).toEqual([event])
    })
  })
}
