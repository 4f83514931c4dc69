/**
 * `npm run bench -- [--only judging,morning,import,desk,whatif,door,urgent,entry,submissions,phone,siting,holding,gstat,sklearn] [--rounds N] [--whole] [--json FILE]`: how fast
 * things are, on invented networks from fixed seeds.
 */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { cpus, loadavg, tmpdir } from 'node:os'
import { join } from 'node:path'
import { parseArgs } from 'node:util'
import { table } from './print/table.ts'
import { besideReferences, references } from './speed/besideReferences.ts'
import { deskSpeed } from './speed/deskSpeed.ts'
import { doorSpeed } from './speed/doorSpeed.ts'
import { entrySpeed } from './speed/entrySpeed.ts'
import { holdingMeasure } from './speed/holdingMeasure.ts'
import { importSpeed } from './speed/importSpeed.ts'
import { judgingSpeed } from './speed/judgingSpeed.ts'
import { largeMorning } from './speed/largeMorning.ts'
import { phoneSpeed } from './speed/phoneSpeed.ts'
import { sitingSpeed } from './speed/sitingSpeed.ts'
import { type SpeedLine, skipped } from './speed/speedLine.ts'
import { submissionSpeed } from './speed/submissionSpeed.ts'
import { syntheticNetwork } from './speed/syntheticNetwork.ts'
import { urgentSpeed } from './speed/urgentSpeed.ts'
import { whatIfSpeed } from './speed/whatIfSpeed.ts'

let workFolder = ''
const large = () => syntheticNetwork({ gaugeCount: 25_000, dayCount: 7, firstDay: 20_000, seed: 5 })
const { values } = parseArgs({
  options: {
    only: { type: 'string' },
    rounds: { type: 'string', default: '3' },
    whole: { type: 'boolean', default: false },
    json: { type: 'string' },
  },
})
const measures: Record<string, () => Promise<SpeedLine[]>> = {
  judging: () => judgingSpeed(workFolder),
  morning: () => largeMorning(large(), workFolder),
  import: () => importSpeed(workFolder),
  desk: () => deskSpeed(workFolder),
  whatif: () => whatIfSpeed(workFolder),
  door: () => doorSpeed(workFolder),
  urgent: () => urgentSpeed(workFolder),
  entry: () => entrySpeed(workFolder),
  submissions: () => submissionSpeed(workFolder),
  phone: () => phoneSpeed(workFolder),
  siting: () => sitingSpeed(),
  holding: () => holdingMeasure(),
}
const names = [...Object.keys(measures), ...references]
const asked = values.only?.split(',') ?? names
const unknown = asked.find((name) => !names.includes(name))
if (unknown !== undefined) stop(`--only takes ${names.join(', ')}; "${unknown}" is none of them`)
const rounds = Number(values.rounds)
if (!Number.isInteger(rounds) || rounds < 1) stop(`--rounds takes a whole number from 1; got "${values.rounds}"`)
const wanted = Object.entries(measures).filter(([name]) => asked.includes(name))
// The reference programs and ours take turns, so that they are one measure.
const which = references.filter((name) => asked.includes(name))
if (which.length > 0)
  wanted.push([which.join(', '), () => besideReferences(large(), workFolder, { which, rounds, isWhole: values.whole })])

function stop(message: string): never {
  console.error(message)
  process.exit(2)
}

workFolder = mkdtempSync(join(tmpdir(), 'gaugewright-speed-'))
const load = (): string => `load ${loadavg()[0]!.toFixed(1)}`
console.log(`Node ${process.version}, ${cpus().length} x ${cpus()[0]?.model ?? 'unknown processor'}, ${load()}`)
const lines: SpeedLine[] = []
try {
  for (const [name, measure] of wanted) {
    if (process.stderr.isTTY) process.stderr.write(`\r\x1b[K${name} …`)
    lines.push(...(await measure().catch((error: Error) => [skipped(name, error.message)])))
  }
} finally {
  if (process.stderr.isTTY) process.stderr.write('\r\x1b[K')
  rmSync(workFolder, { recursive: true, force: true })
}
console.log(
  table(
    ['what', 'measured', 'aim'],
    lines.map((line) => [line.what, line.figure, line.aim]),
  ),
)
console.log(`\nAt the end: ${load()}`)
if (values.json !== undefined) writeFileSync(values.json, JSON.stringify(lines, null, 1))
