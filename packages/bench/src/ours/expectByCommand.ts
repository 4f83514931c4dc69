/** Leave-one-out expectations for the clean readings of a test network by `gaugewright expect`. */
import { join } from 'node:path'
import type { InjectedSet } from '../data/loadInjected.ts'
import { dayFromIso, isoFromDay } from '../data/parseWideCsv.ts'
import type { ExpectationArrays } from '../score/scoreExpectations.ts'
import type { CheckAsk, OursAnswer } from './checkByCommand.ts'
import { readCsvRows } from './readCsvRows.ts'
import { runCommand } from './runCommand.ts'

export const levelCount = 200

export interface OurExpectations extends ExpectationArrays {
  /** The odds of a dry day, one per row. */
  dryChance: Float64Array
}

export async function expectByCommand(
  set: InjectedSet,
  ask: Omit<CheckAsk, 'sameMorning'>,
): Promise<OursAnswer<OurExpectations>> {
  const folder = join(ask.dataFolder, `${set.name}-daily`)
  const out = join(ask.workFolder, `expectations-${set.name}.csv`)
  const words = ['expect', join(folder, 'gauges.csv'), join(folder, 'readings.csv.gz'), '--unit', 'mm', '--out', out]
  words.push('--leave-one-out', '--quantiles', String(levelCount))
  words.push('--from', isoFromDay(ask.fromDay), '--to', isoFromDay(ask.toDay))
  const run = await runCommand(words)
  if (run.failure !== null) return { ok: false, why: run.failure }
  return { ok: true, value: await readExpectations(out, set, ask), seconds: run.seconds }
}

/** Only rows that have a clean reading are kept, so that memory stays within a few hundred megabytes. */
async function readExpectations(
  path: string,
  set: InjectedSet,
  { fromDay, toDay }: { fromDay: number; toDay: number },
): Promise<OurExpectations> {
  const place = new Map(set.gauges.ids.map((id, index) => [id, index]))
  const { clean } = set
  let capacity = 0
  for (
    let cell = (fromDay - clean.firstDay) * clean.gaugeCount;
    cell < (toDay + 1 - clean.firstDay) * clean.gaugeCount;
    cell++
  )
    if (!Number.isNaN(clean.amountMm[cell]!)) capacity++
  const gauges = new Int32Array(capacity)
  const days = new Int32Array(capacity)
  const quantilesMm = new Float32Array(capacity * levelCount)
  const dryChance = new Float64Array(capacity)
  let count = 0
  await readCsvRows(path, (cells, column) => {
    const gauge = place.get(cells[column('gauge')]!)
    const day = dayFromIso(cells[column('day')]!)
    if (gauge === undefined || day < fromDay || day > toDay) return
    if (Number.isNaN(clean.amountMm[(day - clean.firstDay) * clean.gaugeCount + gauge]!)) return
    gauges[count] = gauge
    days[count] = day
    const dry = cells[column('p_dry')]!
    dryChance[count] = dry === '' ? Number.NaN : Number(dry)
    const first = column('q1')
    for (let k = 0; k < levelCount; k++) {
      const text = cells[first + k]!
      quantilesMm[count * levelCount + k] = text === '' ? Number.NaN : Number(text)
    }
    count++
  })
  return {
    gauge: gauges.subarray(0, count),
    day: days.subarray(0, count),
    levelCount,
    quantilesMm: quantilesMm.subarray(0, count * levelCount),
    dryChance: dryChance.subarray(0, count),
  }
}
