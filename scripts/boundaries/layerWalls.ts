/**
 * Between the folders of one package.
 * Desk: server, cli -> app -> ports; store, intake, carriers -> ports; only main.ts sees all.
 * Web: app -> features -> ui, hooks, api, words, workers; features do not know each other.
 */
import type { Module } from './listModules.ts'
import { resolveImport } from './resolveImport.ts'
import type { Violation } from './violation.ts'

interface Layers {
  /** Folder under src -> the folders it may import besides itself. */
  maySee: Record<string, string[]>
  wayOut: string
  /** Files under src that pick adapters, open doors or start a thread, and so may see every layer. */
  seesAll: RegExp
}

const layersOf: Record<string, Layers> = {
  desk: {
    maySee: {
      server: ['app', 'ports'],
      cli: ['app', 'ports'],
      app: ['ports'],
      store: ['ports'],
      intake: ['ports'],
      carriers: ['ports'],
      ports: [],
    },
    wayOut: 'Ask for it through a port and let main.ts pick the adapter',
    seesAll: /^(main|index)\.ts$|\/\w+(Worker|\.worker)\.ts$/,
  },
  web: {
    maySee: {
      app: ['features', 'ui', 'hooks', 'api', 'words'],
      features: ['ui', 'hooks', 'api', 'words', 'workers'],
      ui: ['hooks', 'words'],
      hooks: [],
      api: ['words'],
      words: [],
      workers: [],
    },
    wayOut: 'Move what two places need into ui/, hooks/, api/ or words/, or let app/ pass it down',
    seesAll: /^(main\.tsx|my\.tsx|myWorker\.ts|offer\.tsx)$/,
  },
}

/** @returns the violations of one module against the layers of its own package */
export function layerViolations(module: Module): Violation[] {
  const layers = layersOf[module.packageName]
  if (!layers || module.isTest || !module.inside.startsWith('src/')) return []
  const from = module.inside.slice('src/'.length)
  if (layers.seesAll.test(from)) return []
  const layer = from.split('/')[0]!
  const known = layers.maySee[layer]
  if (!known) {
    const rule = `src/${layer} is no layer of ${module.packageName}`
    return [
      {
        file: module.file,
        line: 1,
        rule,
        wayOut: 'Name it in scripts/boundaries/layerWalls.ts, with what it may see.',
      },
    ]
  }
  const found: Violation[] = []
  for (const { specifier, line } of module.imports) {
    const target = resolveImport(module.file, specifier)
    const home = `packages/${module.packageName}/src/`
    if (target.kind !== 'file' || !target.file.startsWith(home)) continue
    const to = target.file.slice(home.length)
    const reached = to.split('/')[0]!
    const isOtherFeature = layer === 'features' && reached === 'features' && featureOf(from) !== featureOf(to)
    if (isOtherFeature) {
      const rule = `feature ${featureOf(from)} may not import feature ${featureOf(to)}`
      found.push({ file: module.file, line, rule, wayOut: `${layers.wayOut}.` })
    } else if (reached !== layer && !known.includes(reached)) {
      const rule = `in ${module.packageName}, ${layer} may not import ${reached}`
      found.push({ file: module.file, line, rule, wayOut: `${layers.wayOut}.` })
    }
  }
  return found
}

function featureOf(path: string): string {
  return path.split('/')[1] ?? ''
}
