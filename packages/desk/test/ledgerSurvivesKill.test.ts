import { spawn } from 'node:child_process'
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { openDatabase } from '../src/store/sqlite/openDatabase.ts'
import { openSqliteLedger } from '../src/store/sqlite/openSqliteLedger.ts'

const KILLS = 16
const child = fileURLToPath(new URL('./support/appendUntilKilled.ts', import.meta.url))
const desk = fileURLToPath(new URL('..', import.meta.url))

interface Acknowledged {
  /** Batch and the number of its readings. */
  readings: Map<number, number>
  decisions: Set<number>
}

/** Let it write, kill it after so many lines and a moment more, and give back what it had said by then. */
async function killedRun(path: string, round: number, afterLines: number, moreMs: number): Promise<Acknowledged> {
  const words = ['--conditions=source', '--import', 'tsx', child, path, String(round)]
  const running = spawn(process.execPath, words, { cwd: desk, stdio: ['ignore', 'pipe', 'inherit'] })
  let said = ''
  let lines = 0
  running.stdout.on('data', (bytes: Buffer) => {
    said += bytes
    const before = lines
    lines = said.split('\n').length - 1
    if (before <= afterLines && lines > afterLines) setTimeout(() => running.kill('SIGKILL'), moreMs)
  })
  const signal = await new Promise((resolve) => running.on('close', (_, by) => resolve(by)))
  expect(signal, 'it did not end by itself').toBe('SIGKILL')
  const acknowledged: Acknowledged = { readings: new Map(), decisions: new Set() }
  // The last piece may be half a line: what was not said to its end was not acknowledged.
  for (const line of said.split('\n').slice(1, -1)) {
    const [what, batch, count] = line.split(' ')
    if (what === 'r') acknowledged.readings.set(Number(batch), Number(count))
    else acknowledged.decisions.add(Number(batch))
  }
  return acknowledged
}

describe('a ledger whose writer is killed (SIGKILL) under load', () => {
  let folder: string
  let path: string

  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'gaugewright-kill-'))
    path = join(folder, 'ledger.db')
    const ledger = await openSqliteLedger(path)
    await ledger.saveNetwork({
      id: 'north',
      name: 'North',
      timeZone: 'UTC',
      readingTime: '07:00',
      acceptWindowMin: 120,
      unit: 'mm',
      language: 'en',
      docketBelow: 0.5,
    })
    const gauge = (part: number) => ({
      id: `gauge-${part}`,
      networkId: 'north',
      code: `G${part}`,
      name: '',
      latDeg: 45 + part / 1000,
      lonDeg: 11,
      elevationM: null,
      area: null,
      observerName: null,
      resolutionUm: null,
      openedOn: null,
      closedOn: null,
    })
    await ledger.saveGauges(Array.from({ length: 400 }, (_, part) => gauge(part)))
    await ledger.close()
  })
  afterAll(() => rm(folder, { recursive: true }))

  it(`keeps every acknowledged reading and decision exactly once, no half batch, and a sound file, over ${KILLS} kills`, {
    timeout: 300_000,
  }, async () => {
    let acknowledgedInAll = 0
    for (let round = 1; round <= KILLS; round++) {
      const acknowledged = await killedRun(path, round, (round * 37) % 90, (round * 7) % 13)
      acknowledgedInAll += acknowledged.readings.size
      const database = openDatabase(path)
      try {
        expect(database.prepare('pragma integrity_check').get()).toMatchObject({ integrity_check: 'ok' })
        expect(database.prepare('pragma foreign_key_check').all()).toEqual([])
        const stored = new Map<number, number>()
        const ids = database.prepare('select id from reading where id like ?').all(`${round}-%`) as { id: string }[]
        for (const { id } of ids) {
          const batch = Number(id.split('-')[1])
          stored.set(batch, (stored.get(batch) ?? 0) + 1)
        }
        for (const [batch, count] of acknowledged.readings) expect(stored.get(batch)).toBe(count)
        for (const [batch, count] of stored) expect(count).toBe(sizeOf(batch))
        // At most one batch was whole in the file and not yet told.
        expect(stored.size - acknowledged.readings.size).toBeLessThanOrEqual(1)
        const decided = database.prepare('select id from decision where id like ?').all(`d${round}-%`) as {
          id: string
        }[]
        const batches = decided.map(({ id }) => Number(id.split('-')[1]))
        expect(new Set(batches).size).toBe(batches.length)
        for (const batch of acknowledged.decisions) expect(batches).toContain(batch)
      } finally {
        database.close()
      }
    }
    expect(acknowledgedInAll).toBeGreaterThan(KILLS * 5)
  })

  it('opens as usual afterwards, and holds one current reading for each gauge and day', async () => {
    const ledger = await openSqliteLedger(path, { create: false })
    const readings = await ledger.readings('north', '2024-01-01', '2099-12-31')
    const intervals = readings.map(({ gaugeId, lastDay }) => `${gaugeId} ${lastDay}`)
    expect(intervals.length).toBeGreaterThan(100)
    expect(new Set(intervals).size).toBe(intervals.length)
    await ledger.close()
  })
})

/** How many readings the child puts into a batch. */
function sizeOf(batch: number): number {
  if (batch % 10 === 5) return 3
  return batch % 10 === 9 ? 400 : 1 + (batch % 4)
}
