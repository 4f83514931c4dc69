import { emptyDailyTable, type GaugeSet, seededRandom } from '@gaugewright/science'
import { describe, expect, it } from 'vitest'
import { archiveTable } from './archiveTable.ts'
import { checkHeader } from './checkChunk.ts'
import { expectHeader } from './expectChunk.ts'
import { type ArchiveAsk, runArchive } from './runArchive.ts'

const GAUGES = 12
const DAYS = 40
const FIRST = 20_000

/** Twelve gauges in a ring, seeded rain that they share; one reading 100 times too large on day 30. */
function smallArchive(): Pick<ArchiveAsk, 'gauges' | 'table'> {
  const random = seededRandom(9)
  const ids = Array.from({ length: GAUGES }, (_, gauge) => `g${gauge}`)
  const gauges: GaugeSet = {
    ids,
    xM: Float64Array.from(ids, (_, gauge) => 9000 * Math.cos(gauge / 2)),
    yM: Float64Array.from(ids, (_, gauge) => 11_000 * Math.sin(gauge / 2)),
    elevationM: new Float64Array(GAUGES).fill(Number.NaN),
  }
  const table = emptyDailyTable(GAUGES, FIRST, DAYS)
  for (let day = 0; day < DAYS; day++) {
    const level = random() < 0.5 ? 0 : 12 * random()
    for (let gauge = 0; gauge < GAUGES; gauge++) {
      table.amountMm[day * GAUGES + gauge] = Math.round(10 * level * (0.8 + 0.4 * random())) / 10
      table.spanDays[day * GAUGES + gauge] = 1
    }
  }
  for (let gauge = 0; gauge < GAUGES; gauge++) table.amountMm[30 * GAUGES + gauge] = 4 + gauge / 10
  table.amountMm[30 * GAUGES + 5] = 450
  return { gauges, table: archiveTable(table, null, FIRST) }
}

const ask: ArchiveAsk = {
  ...smallArchive(),
  task: 'check',
  sameMorning: false,
  levels: Float64Array.of(0.25, 0.75),
  points: null,
  fromDay: FIRST + 5,
  toDay: FIRST + DAYS - 1,
  threads: 2,
}

async function linesOf(change: Partial<ArchiveAsk>): Promise<string[]> {
  let text = ''
  for await (const chunk of runArchive({ ...ask, ...change })) text += chunk.text
  return text.trimEnd().split('\n')
}

describe('runArchive', () => {
  it('writes one row per reading, by day and gauge, and finds the reading that is a hundred times too large', async () => {
    const lines = await linesOf({})
    expect(lines).toHaveLength(35 * GAUGES)
    const columns = checkHeader.trim().split(',')
    for (const line of lines) expect(line.split(',')).toHaveLength(columns.length)
    const row = lines.find((line) => line.startsWith('g5,2024-11-03,'))?.split(',') ?? []
    const cell = (name: string): string => row[columns.indexOf(name)] ?? ''
    expect(Number(cell('p_stands'))).toBeLessThan(0.01)
    expect(cell('mistake')).toBe('decimal')
    expect(Number(cell('proposed_mm'))).toBeCloseTo(4.5, 6)
    const days = lines.map((line) => line.split(',')[1] ?? '')
    expect([...days].sort()).toEqual(days)
  })

  it('gives the same rows on one thread and on two', async () => {
    expect(await linesOf({ threads: 1 })).toEqual(await linesOf({ threads: 2 }))
  })

  it('in the same morning nothing later than the day is used: later days may be anything', async () => {
    const spoilt = smallArchive()
    for (let cell = 25 * GAUGES; cell < DAYS * GAUGES; cell++) spoilt.table.amountMm[cell] = 77 + (cell % 7)
    const asked = { sameMorning: true, toDay: FIRST + 24 }
    expect(await linesOf({ ...asked, ...spoilt })).toEqual(await linesOf(asked))
  })

  it('expects every place on every day, at the levels asked for, rising', async () => {
    const lines = await linesOf({ task: 'expect', toDay: FIRST + 9 })
    expect(lines).toHaveLength(5 * GAUGES)
    expect(expectHeader(2, false)).toBe('gauge,day,p_dry,mean_mm,q1,q2\n')
    for (const line of lines) {
      const [, , dry, mean, low, high] = line.split(',').map(Number)
      expect(low).toBeLessThanOrEqual(high ?? Number.NaN)
      expect(dry).toBeGreaterThanOrEqual(0)
      expect(mean).toBeGreaterThanOrEqual(0)
    }
  })
})
