/**
 * `npm run bench:plots -- [--from FILE.json …] [--half first|second|all]`: the figures of docs/images/model and the
 * tables of docs/accuracy.md, from what `npm run bench:accuracy -- --json FILE.json` wrote; without --from it measures.
 */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { parseArgs } from 'node:util'
import { measureNetworks } from './accuracy/measureNetworks.ts'
import { printSet } from './accuracy/printSet.ts'
import { readResults } from './accuracy/resultFile.ts'
import { type Half, ourParts, type SetResult } from './accuracy/runSet.ts'
import { findDataFolder } from './data/findDataFolder.ts'
import { injectedSetNames } from './data/loadInjected.ts'
import { accuracyParts } from './document/accuracyDocument.ts'
import { fillMarkers } from './document/fillMarkers.ts'
import { drawFigures } from './plots/drawFigures.ts'
import { table } from './print/table.ts'

const { values } = parseArgs({ options: { from: { type: 'string', multiple: true }, half: { type: 'string' } } })
const halves: Half[] = values.half === undefined ? ['first', 'second'] : [values.half as Half]
if (!halves.every((half) => ['first', 'second', 'all'].includes(half))) {
  console.error(`--half is first, second or all; "${values.half}" is none of them`)
  process.exit(2)
}

const print = (result: SetResult): void =>
  console.log(
    printSet(
      result,
      result.network.gauges.map((gauge) => gauge.id),
    ),
  )

async function measure(): Promise<SetResult[]> {
  const dataFolder = findDataFolder()
  if (dataFolder === null) {
    console.log('skipped: the test networks are not here (set GAUGEWRIGHT_DATA to their folder, or give --from)')
    process.exit(0)
  }
  return measureNetworks({ dataFolder, sets: injectedSetNames, halves, parts: ourParts, onResult: print })
}

function read(paths: readonly string[]): SetResult[] {
  try {
    const read = readResults(paths)
    read.forEach(print)
    return read
  } catch (error) {
    console.error(error instanceof Error ? error.message : String(error))
    process.exit(1)
  }
}

const results = values.from === undefined ? await measure() : read(values.from)
const docs = fileURLToPath(new URL('../../../docs', import.meta.url))
const imageFolder = join(docs, 'images/model')
mkdirSync(imageFolder, { recursive: true })
const figures = drawFigures(results)
for (const { name, svg } of figures) writeFileSync(join(imageFolder, name), svg)
const page = join(docs, 'accuracy.md')
writeFileSync(page, fillMarkers(readFileSync(page, 'utf8'), accuracyParts(results)))
console.log(
  table(
    ['written', 'kB'],
    [
      ...figures.map(({ name, svg }) => [`docs/images/model/${name}`, (svg.length / 1000).toFixed(1)]),
      ['docs/accuracy.md', (readFileSync(page).length / 1000).toFixed(1)],
    ],
  ),
)
