/**
 * A public archive of gauges read to 0.01 in and kept as millimetres with two decimals: daily values of the climate
 * observers of the US National Weather Service (public domain), 2003-2012. It is not shipped; the test is skipped where
 * neither GAUGEWRIGHT_DATA nor a folder `../shared/data` above this file holds it.
 */
import { existsSync, readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { gunzipSync } from 'node:zlib'
import { describe, expect, it } from 'vitest'
import { parseAmount } from '../../src/index.ts'

function archiveFile(): string | null {
  const file = join('florida-daily', 'readings.csv.gz')
  const named = process.env.GAUGEWRIGHT_DATA
  if (named !== undefined && named !== '') return existsSync(join(named, file)) ? join(named, file) : null
  for (let folder = dirname(fileURLToPath(import.meta.url)); folder !== dirname(folder); folder = dirname(folder)) {
    const found = join(folder, '..', 'shared', 'data', file)
    if (existsSync(found)) return found
  }
  return null
}

const file = archiveFile()

describe.skipIf(file === null)('an archive of inch gauges kept in millimetres', () => {
  it('gives back 378 020 readings, every one a whole number of hundredths of an inch, and no question', () => {
    const [, ...rows] = gunzipSync(readFileSync(file ?? ''))
      .toString('utf8')
      .trim()
      .split('\n')
    const ask = { unit: 'mm', decimalMark: '.', finer: 'inchHundredths', capacityUm: null } as const
    let readings = 0
    let largestUm = 0
    for (const cell of rows.flatMap((row) => row.split(',').slice(1))) {
      const answer = parseAmount(cell, ask)
      if (answer.kind === 'missing') continue
      if (answer.kind !== 'amount' || answer.amountUm % 254 !== 0) throw new Error(`${cell}: ${answer.kind}`)
      readings++
      largestUm = Math.max(largestUm, answer.amountUm)
    }
    expect(readings).toBe(378_020) // counted by those who put the archive together
    expect(largestUm).toBe(1_800 * 254) // 457.2 mm
  })
})
