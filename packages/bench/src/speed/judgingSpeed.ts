/** Expectations and findings per second by the two file commands, on one core and on two. */
import { rmSync } from 'node:fs'
import { availableParallelism } from 'node:os'
import { join } from 'node:path'
import { commandPath } from '../ours/runCommand.ts'
import { runMeasured } from './runMeasured.ts'
import { measured, type SpeedLine, skipped } from './speedLine.ts'
import { syntheticNetwork } from './syntheticNetwork.ts'
import { writeNetworkFiles } from './writeNetworkFiles.ts'

const gaugeCount = 600
const dayCount = 200

export async function judgingSpeed(workFolder: string): Promise<SpeedLine[]> {
  const network = syntheticNetwork({ gaugeCount, dayCount, firstDay: 20_000, seed: 11 })
  const files = writeNetworkFiles(workFolder, network, true)
  const out = join(workFolder, 'out.csv')
  const lines: SpeedLine[] = []
  for (const [task, extra] of [
    ['check', []],
    ['expect', ['--leave-one-out', '--quantiles', '9']],
  ] as const) {
    for (const cores of [1, 2]) {
      const noun = task === 'check' ? 'findings' : 'leave-one-out expectations'
      const what = `${noun}: ${gaugeCount} gauges x ${dayCount} days on ${cores === 1 ? 'one core' : 'two cores'}`
      if (cores > availableParallelism()) {
        lines.push(skipped(what, 'this machine has one core'))
        continue
      }
      const words = [commandPath, task, files.gauges, files.readings, '--unit', 'mm', '--out', out, ...extra]
      const run = await runMeasured(process.execPath, words, cores)
      rmSync(out, { force: true })
      if (run.failure !== null) lines.push(skipped(what, run.failure))
      else {
        const rate = `, ${Math.round(files.readingCount / run.seconds)} a second`
        lines.push(measured(what, run, task === 'check' && cores === 2 ? '20 s' : '', rate))
      }
    }
  }
  return lines
}
