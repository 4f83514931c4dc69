/** What the programs of a comparison are given: one invented network as files. */
import { mkdirSync } from 'node:fs'
import { join } from 'node:path'
import { isoFromDay } from '../data/parseWideCsv.ts'
import type { SyntheticNetwork } from './syntheticNetwork.ts'
import { writeLastDay, writeNetworkFiles, writeRootsOfLastDay } from './writeNetworkFiles.ts'

export interface ReferenceFiles {
  gauges: string
  /** All days, and the last one alone. */
  readings: string
  lastDay: string
  /** x,y,root of the last day. */
  roots: string
  /** ISO date of the last day, which is judged. */
  morning: string
  /** Where programs write their answers. */
  answer: (name: string) => string
  gaugeCount: number
  dayCount: number
  /** Gauges that reported on the last day. */
  reportCount: number
}

export function referenceFiles(network: SyntheticNetwork, workFolder: string): ReferenceFiles {
  const folder = join(workFolder, 'references')
  mkdirSync(folder)
  const { gaugeCount, firstDay, dayCount, spanDays } = network.table
  const { gauges, readings } = writeNetworkFiles(folder, network, true)
  return {
    gauges,
    readings,
    lastDay: writeLastDay(folder, network),
    roots: writeRootsOfLastDay(folder, network),
    morning: isoFromDay(firstDay + dayCount - 1),
    answer: (name) => join(folder, name),
    gaugeCount,
    dayCount,
    reportCount: spanDays.subarray((dayCount - 1) * gaugeCount).filter((span) => span > 0).length,
  }
}
