/**
 * `npm run bench:accuracy -- [--set trentino|parana|florida] [--half first|second|all] [--json FILE]
 *   [--parts day-after,same-morning,expect|none]`: the published checks and ours on networks with labelled mistakes.
 */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { parseArgs } from 'node:util'
import { printSet } from './accuracy/printSet.ts'
import { type Half, runSet, type SetResult } from './accuracy/runSet.ts'
import { findDataFolder } from './data/findDataFolder.ts'
import { injectedSetNames, loadInjected } from './data/loadInjected.ts'

const parts = ['day-after', 'same-morning', 'expect'] as const
const { values } = parseArgs({
  options: {
    set: { type: 'string', multiple: true },
    half: { type: 'string' },
    json: { type: 'string' },
    parts: { type: 'string', default: parts.join(',') },
  },
})
const sets = injectedSetNames.filter((name) => values.set === undefined || values.set.includes(name))
const halves: Half[] = values.half === undefined ? ['first', 'second'] : [values.half as Half]
if (sets.length === 0 || !halves.every((half) => ['first', 'second', 'all'].includes(half))) {
  console.error(`--set is one of ${injectedSetNames.join(', ')}; --half is first, second or all`)
  process.exit(2)
}

const dataFolder = findDataFolder()
if (dataFolder === null) {
  console.log('skipped: the test networks are not here (set GAUGEWRIGHT_DATA to their folder)')
  process.exit(0)
}
const workFolder = mkdtempSync(join(tmpdir(), 'gaugewright-accuracy-'))
const results: SetResult[] = []
try {
  for (const name of sets) {
    const set = loadInjected(dataFolder, name)
    const result = await runSet(set, {
      dataFolder,
      workFolder,
      halves,
      parts: parts.filter((part) => values.parts.split(',').includes(part)),
      onProgress: (words) => {
        if (process.stderr.isTTY) process.stderr.write(`\r\x1b[K${name}: ${words} …`)
      },
    })
    if (process.stderr.isTTY) process.stderr.write('\r\x1b[K')
    console.log(printSet(result, set.gauges.ids))
    results.push(result)
  }
} finally {
  rmSync(workFolder, { recursive: true, force: true })
}
if (values.json !== undefined)
  writeFileSync(
    values.json,
    JSON.stringify(results, (key, value) => (key === 'crpsEachMm' ? undefined : value), 1),
  )
