/** The invented network as the two files that the command reads. */
import { closeSync, openSync, writeFileSync, writeSync } from 'node:fs'
import { join } from 'node:path'
import { isoFromDay } from '../data/parseWideCsv.ts'
import type { SyntheticNetwork } from './syntheticNetwork.ts'

export interface NetworkFiles {
  gauges: string
  readings: string
  readingCount: number
}

/** @param plane  true for metres on a plane, false for degrees about 10 N 40 W (open sea, so that no real place is meant) */
export function writeNetworkFiles(folder: string, network: SyntheticNetwork, plane: boolean): NetworkFiles {
  const { gauges, table } = network
  const gaugeRows = gauges.ids.map((id, g) => {
    const xM = gauges.xM[g]!
    const yM = gauges.yM[g]!
    const place = plane
      ? `${xM.toFixed(0)},${yM.toFixed(0)}`
      : `${(10 + yM / 111_195).toFixed(5)},${(-40 + xM / 109_500).toFixed(5)}`
    return `${id},${place},${gauges.elevationM[g]!}`
  })
  const files = { gauges: join(folder, 'gauges.csv'), readings: join(folder, 'readings.csv'), readingCount: 0 }
  writeFileSync(files.gauges, `gauge,${plane ? 'x_m,y_m' : 'lat,lon'},elev_m\n${gaugeRows.join('\n')}\n`)
  const out = openSync(files.readings, 'w')
  writeSync(out, 'gauge,day,amount\n')
  for (let row = 0; row < table.dayCount; row++) {
    const iso = isoFromDay(table.firstDay + row)
    let text = ''
    for (let gauge = 0; gauge < table.gaugeCount; gauge++) {
      const amountMm = table.amountMm[row * table.gaugeCount + gauge]!
      if (Number.isNaN(amountMm)) continue
      text += `${gauges.ids[gauge]},${iso},${amountMm}\n`
      files.readingCount++
    }
    writeSync(out, text)
  }
  closeSync(out)
  return files
}

/** The readings of the last day alone, as another file beside the network's own. */
export function writeLastDay(folder: string, network: SyntheticNetwork): string {
  const { gauges, table } = network
  const iso = isoFromDay(table.firstDay + table.dayCount - 1)
  const rows = lastDayMm(network).flatMap((mm, g) => (Number.isNaN(mm) ? [] : [`${gauges.ids[g]},${iso},${mm}\n`]))
  const path = join(folder, 'last-day.csv')
  writeFileSync(path, `gauge,day,amount\n${rows.join('')}`)
  return path
}

/** Place of every gauge and square root of its amount on the last day, nothing where it was silent. */
export function writeRootsOfLastDay(folder: string, network: SyntheticNetwork): string {
  const { xM, yM } = network.gauges
  const rows = lastDayMm(network).map((mm, g) => `${xM[g]},${yM[g]},${Number.isNaN(mm) ? '' : Math.sqrt(mm)}\n`)
  const path = join(folder, 'roots.csv')
  writeFileSync(path, `x,y,root\n${rows.join('')}`)
  return path
}

function lastDayMm({ table }: SyntheticNetwork): number[] {
  return Array.from(table.amountMm.subarray((table.dayCount - 1) * table.gaugeCount))
}
