/**
 * `npm run bench:words -- [--set trentino|parana|florida] [--mistake KIND] [--count 5] [--seed 1] [--cases FOLDER]`: what
 * the desk says of real readings, for reading by eye. `--cases` keeps the judged cases in a folder, so that words can be
 * changed and read again at once.
 */
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { parseArgs } from 'node:util'
import { gunzipSync, gzipSync } from 'node:zlib'
import { mistakes } from '@gaugewright/science'
import { findDataFolder } from './data/findDataFolder.ts'
import { type InjectedSetName, injectedSetNames, loadInjected } from './data/loadInjected.ts'
import type { JudgedCase } from './words/judgedCase.ts'
import { judgeFirstHalf } from './words/judgeFirstHalf.ts'
import { pickCases } from './words/pickCases.ts'
import { printCase } from './words/printCase.ts'
import { wordFaults } from './words/wordFaults.ts'

const { values } = parseArgs({
  options: {
    set: { type: 'string', multiple: true },
    mistake: { type: 'string', multiple: true },
    count: { type: 'string', default: '5' },
    seed: { type: 'string', default: '1' },
    cases: { type: 'string' },
  },
})
const allKinds = ['stands', ...mistakes] as const
const sets = injectedSetNames.filter((name) => values.set === undefined || values.set.includes(name))
const kinds = allKinds.filter((kind) => values.mistake === undefined || values.mistake.includes(kind))
const [count, seed] = [Number(values.count), Number(values.seed)]
if (sets.length === 0 || kinds.length === 0 || !(count > 0) || !Number.isInteger(seed)) {
  console.error(`--set is one of ${injectedSetNames.join(', ')}; --mistake one of ${allKinds.join(', ')}`)
  process.exit(2)
}

const dataFolder = findDataFolder()
if (dataFolder === null) {
  console.log('skipped: the test networks are not here (set GAUGEWRIGHT_DATA to their folder)')
  process.exit(0)
}
for (const name of sets) {
  const cases = judgedCases(dataFolder, name, values.cases)
  const faults = cases.flatMap(wordFaults)
  for (const kind of kinds) {
    const picked = pickCases(cases, kind, count, seed)
    if (picked.length === 0) console.log(`${name}, ${kind}: no case`)
    for (const [index, one] of picked.entries())
      console.log(`${printCase(one, kind, `${name}, ${kind} ${index + 1}`)}\n`)
  }
  console.log(`${name}: ${cases.length} cases worded, ${faults.length} faults`)
  for (const fault of faults.slice(0, 20)) console.log(`  ${fault}`)
  if (faults.length > 0) process.exitCode = 1
}

function judgedCases(folder: string, name: InjectedSetName, keptIn: string | undefined): JudgedCase[] {
  const file = keptIn === undefined ? null : join(keptIn, `${name}.json.gz`)
  if (file !== null && existsSync(file)) return JSON.parse(gunzipSync(readFileSync(file)).toString('utf8'))
  const cases = judgeFirstHalf(loadInjected(folder, name), (words) => {
    if (process.stderr.isTTY) process.stderr.write(`\r\x1b[K${name}: ${words} …`)
  })
  if (process.stderr.isTTY) process.stderr.write('\r\x1b[K')
  if (file !== null) {
    mkdirSync(keptIn!, { recursive: true })
    writeFileSync(file, gzipSync(JSON.stringify(cases)))
  }
  return cases
}
