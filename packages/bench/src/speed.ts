/**
 * `npm run bench -- [--only judging,morning,import,desk,gstat] [--json FILE]`: how fast things are, on invented
 * networks from fixed seeds.
 */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { cpus, tmpdir } from 'node:os'
import { join } from 'node:path'
import { parseArgs } from 'node:util'
import { table } from './print/table.ts'
import { deskSpeed } from './speed/deskSpeed.ts'
import { gstatKriging } from './speed/gstatKriging.ts'
import { importSpeed } from './speed/importSpeed.ts'
import { judgingSpeed } from './speed/judgingSpeed.ts'
import { largeMorning } from './speed/largeMorning.ts'
import { type SpeedLine, skipped } from './speed/speedLine.ts'
import { syntheticNetwork } from './speed/syntheticNetwork.ts'

let workFolder = ''
const large = () => syntheticNetwork({ gaugeCount: 25_000, dayCount: 7, firstDay: 20_000, seed: 5 })
const measures: Record<string, () => Promise<SpeedLine[]>> = {
  judging: () => judgingSpeed(workFolder),
  morning: () => largeMorning(large(), workFolder),
  gstat: () => gstatKriging(large(), workFolder),
  import: () => importSpeed(workFolder),
  desk: () => deskSpeed(workFolder),
}

const { values } = parseArgs({ options: { only: { type: 'string' }, json: { type: 'string' } } })
const wanted = values.only?.split(',') ?? Object.keys(measures)
const unknown = wanted.filter((name) => !(name in measures))
if (unknown.length > 0) {
  console.error(`--only takes ${Object.keys(measures).join(', ')}; "${unknown[0]}" is none of them`)
  process.exit(2)
}

workFolder = mkdtempSync(join(tmpdir(), 'gaugewright-speed-'))
console.log(`Node ${process.version}, ${cpus().length} x ${cpus()[0]?.model ?? 'unknown processor'}`)
const lines: SpeedLine[] = []
try {
  for (const name of wanted) {
    if (process.stderr.isTTY) process.stderr.write(`\r\x1b[K${name} …`)
    lines.push(...(await measures[name]!().catch((error: Error) => [skipped(name, error.message)])))
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
if (values.json !== undefined) writeFileSync(values.json, JSON.stringify(lines, null, 1))
