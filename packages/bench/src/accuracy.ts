/**
 * `npm run bench:accuracy -- [--set trentino|parana|florida] [--half first|second|all] [--json FILE]
 *   [--parts day-after,same-morning,expect|none]`: the published checks and ours on networks with labelled mistakes.
 */
import { parseArgs } from 'node:util'
import { measureNetworks } from './accuracy/measureNetworks.ts'
import { printSet } from './accuracy/printSet.ts'
import { writeResults } from './accuracy/resultFile.ts'
import { type Half, ourParts } from './accuracy/runSet.ts'
import { findDataFolder } from './data/findDataFolder.ts'
import { injectedSetNames } from './data/loadInjected.ts'

const { values } = parseArgs({
  options: {
    set: { type: 'string', multiple: true },
    half: { type: 'string' },
    json: { type: 'string' },
    parts: { type: 'string', default: ourParts.join(',') },
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
const parts = ourParts.filter((part) => values.parts.split(',').includes(part))
const results = await measureNetworks({
  dataFolder,
  sets,
  halves,
  parts,
  onResult: (result, set) => console.log(printSet(result, set.gauges.ids)),
})
if (values.json !== undefined) writeResults(values.json, results)
