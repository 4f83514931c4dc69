/** What every store of announced absences promises. Each adapter runs the same suite. */
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { Absences } from '../ports/absence.ts'
import type { Ledger } from '../ports/ledger.ts'

export interface OpenedAbsences {
  ledger: Ledger
  absences: Absences
  dispose: () => Promise<void>
}

const away = (id: string, gaugeId: string, firstDay: string, lastDay: string) => ({
  id,
  networkId: 'north',
  gaugeId,
  firstDay,
  lastDay,
  announcedBy: `observer of ${gaugeId}`,
  announcedAtUtc: '2026-05-01T08:00:00.000Z',
})

export function absencePromises(name: string, open: () => Promise<OpenedAbsences>): void {
  describe(`announced absences in ${name}`, () => {
    let opened: OpenedAbsences
    beforeEach(async () => {
      opened = await open()
      await opened.ledger.saveNetwork({
        id: 'north',
        name: 'North',
        timeZone: 'UTC',
        readingTime: '07:00',
        acceptWindowMin: 120,
        unit: 'mm',
        language: 'en',
        docketBelow: 0.5,
      })
      const gauge = { networkId: 'north', name: '', latDeg: 45, lonDeg: 11, elevationM: null, area: null }
      const rest = { observerName: null, resolutionUm: null, openedOn: null, closedOn: null }
      await opened.ledger.saveGauges(['a', 'b'].map((id) => ({ ...gauge, ...rest, id, code: id.toUpperCase() })))
    })
    afterEach(() => opened.dispose())

    it('are what the roll asks for, until they are withdrawn', async () => {
      const { absences, ledger } = opened
      expect(await absences.announce(away('1', 'b', '2026-05-10', '2026-05-14'))).toBe(true)
      expect(await absences.announce(away('2', 'a', '2026-05-14', '2026-05-20'))).toBe(true)
      expect(await absences.ofDays('north', '2026-05-14', '2026-05-14')).toMatchObject([{ id: '1' }, { id: '2' }])
      expect(await ledger.absences('north', '2026-05-15', '2026-05-31')).toEqual([
        { networkId: 'north', gaugeId: 'a', firstDay: '2026-05-14', lastDay: '2026-05-20' },
      ])
      expect(await absences.withdraw('north', '2', 'P', '2026-05-13T08:00:00Z')).toBe(true)
      expect(await absences.withdraw('north', '2', 'P', '2026-05-13T08:00:00Z')).toBe(false)
      expect(await absences.withdraw('north', 'none', 'P', '2026-05-13T08:00:00Z')).toBe(false)
      expect(await ledger.absences('north', '2026-05-15', '2026-05-31')).toEqual([])
      expect(await absences.ofDays('south', '2026-05-01', '2026-05-31')).toEqual([])
    })

    it('the same gauge and days stand once; once withdrawn they may be announced anew, and all of it is kept', async () => {
      const { absences } = opened
      const first = away('1', 'a', '2026-05-10', '2026-05-14')
      await absences.announce(first)
      expect(await absences.announce({ ...first, id: '2' })).toBe(false)
      await absences.withdraw('north', '1', 'P', '2026-05-02T08:00:00.000Z')
      expect(await absences.announce({ ...first, id: '3' })).toBe(true)
      expect(await absences.ofGauge('north', 'a')).toEqual([
        { ...first, withdrawnBy: 'P', withdrawnAtUtc: '2026-05-02T08:00:00.000Z' },
        { ...first, id: '3', withdrawnBy: null, withdrawnAtUtc: null },
      ])
      expect(await absences.ofGauge('north', 'b')).toEqual([])
    })

    it('days that were withdrawn can be saved again through the ledger, as often as plans change', async () => {
      const { absences, ledger } = opened
      const days = { networkId: 'north', gaugeId: 'a', firstDay: '2026-05-10', lastDay: '2026-05-14' }
      for (let change = 0; change < 3; change++) {
        await ledger.saveAbsence(days)
        await ledger.saveAbsence(days)
        const standing = await absences.ofDays('north', '2026-05-10', '2026-05-10')
        expect(standing).toHaveLength(1)
        expect(await absences.withdraw('north', standing[0]?.id ?? '', 'P', '2026-05-02T08:00:00Z')).toBe(true)
      }
      expect(await absences.ofGauge('north', 'a')).toHaveLength(3)
    })

    it('refuses a gauge that is not there, days in the wrong order, and more than a year', async () => {
      const { absences } = opened
      const code = async (absence: ReturnType<typeof away>): Promise<unknown> =>
        await absences.announce(absence).catch((error) => error.problem.code)
      expect(await code(away('1', 'x', '2026-05-10', '2026-05-14'))).toBe('LEDGER_GAUGE_UNKNOWN')
      expect(await code(away('1', 'a', '2026-05-10', '2026-05-09'))).toBe('ABSENCE_NOT_VALID')
      expect(await code(away('1', 'a', '2026-05-10', '2027-05-11'))).toBe('ABSENCE_NOT_VALID')
      expect(await code(away('1', 'a', '2026-05-10', '2027-05-10'))).toBe(true)
    })
  })
}
