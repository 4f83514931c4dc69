/** A million readings into a fresh ledger, in a process of its own. */
import { mkdirSync } from 'node:fs'
import { join } from 'node:path'
import { commandPath } from '../ours/runCommand.ts'
import { runMeasured } from './runMeasured.ts'
import { measured, type SpeedLine, skipped } from './speedLine.ts'
import { syntheticNetwork } from './syntheticNetwork.ts'
import { writeNetworkFiles } from './writeNetworkFiles.ts'

export async function importSpeed(workFolder: string): Promise<SpeedLine[]> {
  const folder = join(workFolder, 'million')
  mkdirSync(folder)
  const network = syntheticNetwork({ gaugeCount: 1000, dayCount: 1080, firstDay: 18_000, seed: 3 })
  const files = writeNetworkFiles(folder, network, false)
  const ledger = join(folder, 'ledger.db')
  const what = `import of ${files.readingCount} readings`
  const into = ['--db', ledger, '--time-zone', 'UTC']
  const gauges = await runMeasured(process.execPath, [commandPath, 'import', files.gauges, ...into])
  if (gauges.failure !== null) return [skipped(what, gauges.failure)]
  const words = ['import', files.readings, '--unit', 'mm', '--db', ledger]
  const run = await runMeasured(process.execPath, [commandPath, ...words])
  if (run.failure !== null) return [skipped(what, run.failure)]
  return [measured(what, run, '30 s, 300 MB')]
}
