/** The morning of 25,000 gauges: from files to findings, and from files into a ledger and out as the day's review. */
import { mkdirSync } from 'node:fs'
import { join } from 'node:path'
import { isoFromDay } from '../data/parseWideCsv.ts'
import { commandPath } from '../ours/runCommand.ts'
import { runMeasured } from './runMeasured.ts'
import { measured, type SpeedLine, skipped } from './speedLine.ts'
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
  const lines = run.failure === null ? [measured(what, run, '10 s')] : [skipped(what, run.failure)]
  lines.push(...(await throughLedger(network, folder)))
  return lines
}

/** The same from a ledger, as the desk does it: the first time it also learns the network. */
async function throughLedger(network: SyntheticNetwork, folder: string): Promise<SpeedLine[]> {
  const count = network.table.gaugeCount
  const files = writeNetworkFiles(folder, network, false)
  const ledger = join(folder, 'ledger.db')
  const filled = `import of ${count} gauges and ${files.readingCount} readings`
  const words = ['import', files.gauges, files.readings, '--unit', 'mm', '--time-zone', 'UTC', '--db', ledger]
  const imported = await runMeasured(process.execPath, [commandPath, ...words])
  if (imported.failure !== null) return [skipped(filled, imported.failure)]
  const lines = [measured(filled, imported, '')]
  for (const when of ['first time, learning the network', 'again']) {
    const what = `the morning of ${count} gauges on the desk (${when})`
    const run = await runMeasured(process.execPath, [commandPath, 'day', '--db', ledger, '--json'], 2)
    lines.push(run.failure === null ? measured(what, run, '10 s') : skipped(what, run.failure))
  }
  return lines
}
