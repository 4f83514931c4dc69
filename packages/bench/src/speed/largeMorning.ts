/** The morning of 25,000 gauges: from files to findings, and from files into a ledger and out as the day's review. */
import { mkdirSync } from 'node:fs'
import { join } from 'node:path'
import { isoFromDay } from '../data/parseWideCsv.ts'
import { commandPath } from '../ours/runCommand.ts'
import { memory } from './judgingSpeed.ts'
import { runMeasured } from './runMeasured.ts'
import { type SpeedLine, skipped } from './speedLine.ts'
import type { SyntheticNetwork } from './syntheticNetwork.ts'
import { writeNetworkFiles } from './writeNetworkFiles.ts'

export async function largeMorning(network: SyntheticNetwork, workFolder: string): Promise<SpeedLine[]> {
  const folder = join(workFolder, 'large')
  mkdirSync(folder)
  const files = writeNetworkFiles(folder, network, true)
  const { gaugeCount, firstDay, dayCount } = network.table
  const morning = isoFromDay(firstDay + dayCount - 1)
  const what = `the morning of ${gaugeCount} gauges, files to findings (${dayCount} days known)`
  const words = ['check', files.gauges, files.readings, '--unit', 'mm', '--same-morning', '--from', morning]
  const out = join(folder, 'findings.csv')
  const run = await runMeasured(process.execPath, [commandPath, ...words, '--to', morning, '--out', out], 2)
  if (run.failure !== null) return [skipped(what, run.failure)]
  return [{ what, figure: `${run.seconds.toFixed(1)} s, ${memory(run.peakMb)}`, aim: '10 s' }]
}
