/** The readers on three real networks, as they are. Counts from the README of the data and of each folder. */
import { isoFromEpochDay } from '@gaugewright/science'
import { describe, expect, it } from 'vitest'
import { readGaugesFile, readReadingsFile } from '../src/intake/readTables.ts'
import { sharedData } from './support/sharedData.ts'

const data = sharedData()

describe.skipIf(data === null)('real networks (skipped where the open data is not beside the repository)', () => {
  it.each([
    ['florida-daily', 126, 3653, 378_020, '2003-01-01', '2012-12-31'],
    ['parana-daily', 616, 212, 122_950, '2011-01-01', '2011-07-31'],
    ['trentino-daily', 59, 13_149, 546_633, '1958-01-01', '1993-12-31'],
  ])(
    '%s is read whole: %i gauges, %i days, %i readings',
    async (name, gaugeCount, dayCount, readingCount, first, last) => {
      const gauges = await readGaugesFile(`${data}/${name}/gauges.csv`)
      if (!gauges.ok) throw new Error(JSON.stringify(gauges.problem))
      const { gaugeIds, latDeg, lonDeg } = gauges.value
      expect(gaugeIds.length).toBe(gaugeCount)
      expect([...latDeg, ...lonDeg].every(Number.isFinite)).toBe(true)
      const readings = await readReadingsFile(`${data}/${name}/readings.csv.gz`, { unit: 'mm', gaugeIds })
      if (!readings.ok) throw new Error(JSON.stringify(readings.problem))
      const { table, leftOut } = readings.value
      expect(leftOut).toEqual([])
      expect([readings.value.readingCount, table.dayCount]).toEqual([readingCount, dayCount])
      expect([isoFromEpochDay(table.firstDay), isoFromEpochDay(table.firstDay + table.dayCount - 1)]).toEqual([
        first,
        last,
      ])
      let present = 0
      for (const span of table.spanDays) present += span
      expect(present).toBe(readingCount)
    },
  )
})
