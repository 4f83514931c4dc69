/** A table of daily amounts back to the wide layout, for feeding a part of a network to the command. */
import { writeFileSync } from 'node:fs'
import { gzipSync } from 'node:zlib'
import type { DailyTable } from '@gaugewright/science'
import { isoFromDay } from '../data/parseWideCsv.ts'

export function writeWideCsv(path: string, ids: readonly string[], table: DailyTable): void {
  const lines = [`date,${ids.join(',')}`]
  for (let row = 0; row < table.dayCount; row++) {
    const amounts = table.amountMm.subarray(row * table.gaugeCount, (row + 1) * table.gaugeCount)
    const cells = Array.from(amounts, (amountMm) => (Number.isNaN(amountMm) ? '' : String(amountMm)))
    lines.push(`${isoFromDay(table.firstDay + row)},${cells.join(',')}`)
  }
  const text = `${lines.join('\n')}\n`
  writeFileSync(path, path.endsWith('.gz') ? gzipSync(text) : text)
}
