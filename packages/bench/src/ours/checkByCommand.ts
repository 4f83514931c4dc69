/** Findings for a test network by `gaugewright check`. */
import { join } from 'node:path'
import { mistakes } from '@gaugewright/science'
import type { InjectedSet } from '../data/loadInjected.ts'
import { dayFromIso, isoFromDay } from '../data/parseWideCsv.ts'
import type { FindingArrays } from '../score/scoreFindings.ts'
import { readCsvRows } from './readCsvRows.ts'
import { runCommand } from './runCommand.ts'
import { writeWideCsv } from './writeWideCsv.ts'

export type OursAnswer<T> = { ok: true; value: T; seconds: number } | { ok: false; why: string }

export interface CheckAsk {
  dataFolder: string
  workFolder: string
  sameMorning: boolean
  fromDay: number
  toDay: number
}

export async function checkByCommand(set: InjectedSet, ask: CheckAsk): Promise<OursAnswer<FindingArrays>> {
  const folder = join(ask.dataFolder, `${set.name}-daily`)
  const out = join(ask.workFolder, `findings-${set.name}.csv`)
  const words = ['check', join(folder, 'gauges.csv'), join(folder, 'injected.csv.gz'), '--unit', 'mm', '--out', out]
  words.push('--from', isoFromDay(ask.fromDay), '--to', isoFromDay(ask.toDay))
  if (set.history !== null) {
    const history = join(ask.workFolder, `history-${set.name}.csv.gz`)
    writeWideCsv(history, set.gauges.ids, set.history)
    words.push('--history', history)
  }
  if (ask.sameMorning) words.push('--same-morning')
  const run = await runCommand(words)
  if (run.failure !== null) return { ok: false, why: run.failure }
  return { ok: true, value: await readFindings(out, set.gauges.ids), seconds: run.seconds }
}

/** The findings file of the command as arrays. */
export async function readFindings(path: string, ids: readonly string[]): Promise<FindingArrays> {
  const place = new Map(ids.map((id, index) => [id, index]))
  const days = new Map<string, number>()
  const dayOf = (iso: string): number => {
    let day = days.get(iso)
    if (day === undefined) {
      day = dayFromIso(iso)
      days.set(iso, day)
    }
    return day
  }
  const rows = {
    gauge: [] as number[],
    day: [] as number[],
    pStands: [] as number[],
    mistake: [] as number[],
    proposedMm: [] as number[],
    firstDay: [] as number[],
    lastDay: [] as number[],
  }
  await readCsvRows(path, (cells, column) => {
    const cell = (name: string): string => cells[column(name)] ?? ''
    const day = dayOf(cell('day'))
    const mistake = (mistakes as readonly string[]).indexOf(cell('mistake'))
    rows.gauge.push(place.get(cell('gauge')) ?? -1)
    rows.day.push(day)
    rows.pStands.push(cell('p_stands') === '' ? 1 : Number(cell('p_stands')))
    rows.mistake.push(mistake < 0 ? 255 : mistake)
    rows.proposedMm.push(cell('proposed_mm') === '' ? Number.NaN : Number(cell('proposed_mm')))
    rows.firstDay.push(cell('proposed_first_day') === '' ? day : dayOf(cell('proposed_first_day')))
    rows.lastDay.push(cell('proposed_last_day') === '' ? day : dayOf(cell('proposed_last_day')))
  })
  return {
    gauge: Int32Array.from(rows.gauge),
    day: Int32Array.from(rows.day),
    pStands: Float64Array.from(rows.pStands),
    mistake: Uint8Array.from(rows.mistake),
    proposedMm: Float64Array.from(rows.proposedMm),
    proposedFirstDay: Int32Array.from(rows.firstDay),
    proposedLastDay: Int32Array.from(rows.lastDay),
  }
}
