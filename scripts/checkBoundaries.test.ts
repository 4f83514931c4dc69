import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { afterEach, describe, expect, it } from 'vitest'
import { findViolations } from './boundaries/findViolations.ts'
import { wordViolation } from './boundaries/violation.ts'

const roots: string[] = []

/** Writes a small tree and says what is wrong with it, one line a violation. */
function violationsOf(files: Record<string, string>, dependencies: Record<string, string> = {}): string[] {
  const root = mkdtempSync(join(tmpdir(), 'boundaries-'))
  roots.push(root)
  for (const packageName of ['science', 'contract', 'scenario', 'desk', 'web', 'bench']) {
    write(root, `packages/${packageName}/package.json`, JSON.stringify({ dependencies }))
  }
  for (const [file, text] of Object.entries(files)) write(root, file, text)
  return findViolations(root).violations.map(wordViolation)
}

function write(root: string, file: string, text: string): void {
  mkdirSync(dirname(join(root, file)), { recursive: true })
  writeFileSync(join(root, file), text)
}

afterEach(() => {
  for (const root of roots.splice(0)) rmSync(root, { recursive: true })
})

describe('a tree that keeps the order', () => {
  it('has no violation, with every allowed direction used', () => {
    const found = violationsOf(
      {
        'packages/science/src/index.ts': `export { half } from './half.ts'`,
        'packages/science/src/half.ts': `import KDBush from 'kdbush'\nimport erf from '@stdlib/math-base-special-erf'\nexport const half = [KDBush, erf]`,
        'packages/contract/src/index.ts': `import type { half } from '@gaugewright/science'\nexport type Half = typeof half`,
        'packages/scenario/src/index.ts': `export { half } from '@gaugewright/science'`,
        'packages/desk/src/main.ts': `import './server/serve.ts'\nimport './store/open.ts'\nimport './cli/run.ts'\nimport './intake/read.ts'`,
        'packages/desk/src/server/serve.ts': `import { readFile } from 'node:fs/promises'\nimport '../app/use.ts'\nexport { readFile }`,
        'packages/desk/src/cli/run.ts': `import '../app/use.ts'\nimport '@gaugewright/scenario'`,
        'packages/desk/src/app/use.ts': `import type { Port } from '../ports/port.ts'\nexport type Use = Port`,
        'packages/desk/src/store/open.ts': `import type { Port } from '../ports/port.ts'\nexport type Open = Port`,
        'packages/desk/src/intake/read.ts': `import type { Port } from '../ports/port.ts'\nexport type Read = Port`,
        'packages/desk/src/ports/port.ts': `export type Port = string`,
        'packages/web/src/main.tsx': `import './app/App.tsx'`,
        'packages/web/src/app/App.tsx': `import '../features/today/Today.tsx'\nexport const App = () => <p>here</p>`,
        'packages/web/src/features/today/Today.tsx': `import '../../ui/Button.tsx'\nimport '../../api/ask.ts'\nimport './today.css'`,
        'packages/web/src/ui/Button.tsx': `import '../hooks/useWidth.ts'`,
        'packages/web/src/hooks/useWidth.ts': `export const useWidth = () => 1`,
        'packages/web/src/api/ask.ts': `import '@gaugewright/contract'`,
        'packages/bench/src/speed.ts': `import '@gaugewright/desk'\nimport '@gaugewright/scenario'`,
      },
      { kdbush: '1', '@stdlib/math-base-special-erf': '1' },
    )
    expect(found).toEqual([])
  })
})

describe('walls between packages', () => {
  it('web may not import desk, not even for a type; the way out is the contract', () => {
    const file = 'packages/web/src/features/today/Today.tsx'
    const [found] = violationsOf({
      [file]: `\nimport type { Ledger } from '@gaugewright/desk'\nexport type L = Ledger`,
    })
    expect(found).toBe(
      `${file}:2  web may not import desk. Put the shared shape in packages/contract and ask the desk for it by its interface.`,
    )
  })

  it.each([
    ['desk', 'web'],
    ['contract', 'desk'],
    ['scenario', 'contract'],
    ['science', 'contract'],
    ['science', 'bench'],
    ['web', 'scenario'],
  ])('%s may not import %s', (from, to) => {
    const entry = from === 'web' ? 'main.tsx' : 'index.ts'
    const found = violationsOf({ [`packages/${from}/src/${entry}`]: `export { x } from '@gaugewright/${to}'` })
    expect(found).toHaveLength(1)
    expect(found[0]).toContain(`${from} may not import ${to}`)
  })

  it('sees imports in a type, imports on demand, and require', () => {
    const found = violationsOf({
      'packages/web/src/api/a.ts': `export type A = import('@gaugewright/desk').Ledger`,
      'packages/web/src/api/b.ts': `export const b = () => import('@gaugewright/desk')`,
      'packages/web/src/api/c.ts': `declare const require: (name: string) => unknown\nexport const c = require('@gaugewright/desk')`,
    })
    expect(found.map((line) => line.split('  ')[0])).toEqual([
      'packages/web/src/api/a.ts:1',
      'packages/web/src/api/b.ts:1',
      'packages/web/src/api/c.ts:2',
    ])
  })

  it('another package is entered by its name, not by a path and not behind its index', () => {
    const found = violationsOf({
      'packages/desk/src/app/a.ts': `import '../../../science/src/half.ts'`,
      'packages/desk/src/app/b.ts': `import '@gaugewright/science/src/half.ts'`,
    })
    expect(found[0]).toContain('leaves the package by its path')
    expect(found[1]).toContain('Export it from packages/science/src/index.ts.')
  })

  it('a package does not import itself by name', () => {
    const found = violationsOf({ 'packages/desk/src/app/a.ts': `import '@gaugewright/desk'` })
    expect(found[0]).toContain('Inside a package import the file itself.')
  })

  it('tests keep the order of packages too, but may use test libraries', () => {
    const found = violationsOf({
      'packages/science/src/a.test.ts': `import { it } from 'vitest'\nimport '@gaugewright/desk'\nimport 'node:fs'`,
    })
    expect(found).toHaveLength(1)
    expect(found[0]).toContain('science may not import desk')
  })

  it('an outside library must stand in the manifest, and science has a short list besides', () => {
    const files = {
      'packages/desk/src/app/a.ts': `import 'kysely/helpers'`,
      'packages/science/src/b.ts': `import { sum } from 'simple-sums'`,
    }
    const undeclared = violationsOf(files)
    expect(undeclared[0]).toContain('kysely is not among the dependencies of desk')
    const declared = violationsOf(files, { kysely: '1', 'simple-sums': '1' })
    expect(declared).toHaveLength(1)
    expect(declared[0]).toContain('science may not import simple-sums')
  })

  it('science, contract, scenario and web do without Node', () => {
    for (const packageName of ['science', 'contract', 'scenario']) {
      expect(violationsOf({ [`packages/${packageName}/src/a.ts`]: `import 'node:fs'` })).toHaveLength(1)
    }
    expect(violationsOf({ 'packages/web/src/api/a.ts': `import 'fs/promises'` })).toHaveLength(1)
  })
})

describe('layers', () => {
  it.each([
    ['desk', 'app/a.ts', '../store/open.ts', 'in desk, app may not import store'],
    ['desk', 'cli/a.ts', '../server/serve.ts', 'in desk, cli may not import server'],
    ['desk', 'ports/a.ts', '../app/use.ts', 'in desk, ports may not import app'],
    ['desk', 'store/sqlite/a.ts', '../../intake/read.ts', 'in desk, store may not import intake'],
    ['web', 'ui/a.ts', '../features/today/todayView.ts', 'in web, ui may not import features'],
    ['web', 'features/today/a.ts', '../gauges/gaugesView.ts', 'feature today may not import feature gauges'],
  ])('%s/src/%s may not import %s', (packageName, inside, specifier, rule) => {
    const found = violationsOf({ [`packages/${packageName}/src/${inside}`]: `import type { X } from '${specifier}'` })
    expect(found).toHaveLength(1)
    expect(found[0]).toContain(rule)
  })

  it('a folder without a place in the order is named', () => {
    const found = violationsOf({ 'packages/desk/src/helpers/a.ts': 'export const a = 1' })
    expect(found[0]).toContain('src/helpers is no layer of desk')
  })

  it('main.ts and the entry file of a worker see all', () => {
    const text = `import '../store/open.ts'\nimport '../intake/read.ts'`
    expect(violationsOf({ 'packages/desk/src/app/importWorker.ts': text })).toEqual([])
    expect(violationsOf({ 'packages/desk/src/app/importing.ts': text })).toHaveLength(2)
  })
})

describe('pure science', () => {
  it.each([
    ['export const a = Math.random()', 'Math.random'],
    ['export const a = Date.now()', 'Date'],
    ['export const a = new Date(0)', 'Date'],
    ['export const a = () => console.log(1)', 'console'],
    ['export const a = process.env', 'process'],
    [
      'declare const Temporal: { Now: { instant(): unknown } }\nexport const a = Temporal.Now.instant()',
      'Temporal.Now',
    ],
  ])('%s is refused', (text, name) => {
    const found = violationsOf({ 'packages/science/src/a.ts': text })
    expect(found).toHaveLength(1)
    expect(found[0]).toContain(`science may not use ${name}`)
  })

  it('a property or a key of that name is not the global', () => {
    const text = 'export const a = { process: 1, Date: 2 }\nexport const b = a.process + a.Date'
    expect(violationsOf({ 'packages/science/src/a.ts': text })).toEqual([])
  })

  it('the desk has a clock', () => {
    expect(violationsOf({ 'packages/desk/src/app/a.ts': 'export const a = Date.now()' })).toEqual([])
  })
})

describe('rings and exports', () => {
  it('a ring of imports is named once, in order, types included', () => {
    const found = violationsOf({
      'packages/science/src/a.ts': `import type { B } from './b.ts'\nexport type A = B`,
      'packages/science/src/b.ts': `import type { C } from './c.ts'\nexport type B = C`,
      'packages/science/src/c.ts': `import type { A } from './a.ts'\nexport type C = A | 1`,
    })
    expect(found).toEqual([
      'packages/science/src/a.ts:1  imports form a ring: a.ts -> b.ts -> c.ts -> a.ts. Move what both need into a file that imports neither.',
    ])
  })

  it('two ways to one file are not a ring', () => {
    const found = violationsOf({
      'packages/science/src/a.ts': `import './b.ts'\nimport './c.ts'`,
      'packages/science/src/b.ts': `import './d.ts'`,
      'packages/science/src/c.ts': `import './d.ts'`,
      'packages/science/src/d.ts': `export const d = 1`,
    })
    expect(found).toEqual([])
  })

  it.each(['export default 1', 'const a = 1\nexport { a as default }', `export * from './a.ts'`])(
    '%s is refused',
    (text) => {
      const found = violationsOf({
        'packages/desk/src/app/b.ts': text,
        'packages/desk/src/app/a.ts': 'export const a = 1',
      })
      expect(found).toHaveLength(1)
    },
  )
})
