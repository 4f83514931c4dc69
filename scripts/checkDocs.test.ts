import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { afterEach, describe, expect, it } from 'vitest'
import { wordFault } from './documents/fault.ts'
import { findFaults } from './documents/findFaults.ts'

const sound: Record<string, string> = {
  'package.json': JSON.stringify({ scripts: { check: 'x', demo: 'x' } }),
  '.ci/run': '#!/usr/bin/env bash\nnpm ci && npm run check\n',
  'README.md': [
    '# A thing',
    'See [errors](docs/errors.md#errors) and ![today](docs/today.png); [web](https://example.org/no).',
    '```sh',
    'npm ci && npm run check',
    '```',
    '| command | does |',
    '| --- | --- |',
    '| `day [DATE]` | prints |',
  ].join('\n'),
  'docs/today.png': '',
  'docs/errors.md':
    '# Errors\n\n| code | cause |\n| --- | --- |\n| `FILE_EMPTY` | no text |\n| `SHAPES_DIFFER` | ours |\n',
  'docs/references.md': '# References\n\n- **[Key2010]** A. Key (2010). A paper.\n',
  'docs/decisions/0000-template.md': '# 0000 Title\n',
  'docs/decisions/0001-one-file.md': '# 0001 One file\n\nAccepted 2026-11-25. Replaces none.\n',
  'packages/desk/src/cli/commands/day.ts': `export const day = 'day'\n`,
  'packages/desk/src/intake/a.ts': `// Source: [Key2010].\nexport const refusal = { code: 'FILE_EMPTY' }\n`,
  'packages/science/src/error.ts': `export type Code = 'SHAPES_DIFFER'\n`,
}
const roots: string[] = []

/** Writes the sound tree with some files changed (null: left out) and words what is wrong with it. */
function faultsOf(changes: Record<string, string | null>): string[] {
  const root = mkdtempSync(join(tmpdir(), 'documents-'))
  roots.push(root)
  for (const [file, text] of Object.entries({ ...sound, ...changes })) {
    if (text === null) continue
    mkdirSync(dirname(join(root, file)), { recursive: true })
    writeFileSync(join(root, file), text)
  }
  return findFaults(root).faults.map(wordFault)
}

afterEach(() => {
  for (const root of roots.splice(0)) rmSync(root, { recursive: true })
})

it('sound documents have no fault', () => {
  expect(faultsOf({})).toEqual([])
})

describe('links', () => {
  it('a dead link is named with its line', () => {
    const found = faultsOf({ 'docs/life.md': '# Life\n\nfirst\nsecond [there](../packages/desk/src/none.ts)\n' })
    expect(found).toEqual(['docs/life.md:4  links to packages/desk/src/none.ts, which does not exist'])
  })

  it('a link to a heading that is not there is named', () => {
    const found = faultsOf({
      'docs/life.md': '# Life of a reading\n\n[here](#life-of-a-reading) [there](errors.md#other)\n',
    })
    expect(found).toEqual(['docs/life.md:3  links to the heading #other, which is not in docs/errors.md'])
  })

  it('a missing picture is named', () => {
    expect(faultsOf({ 'docs/today.png': null })[0]).toContain('README.md:2  links to docs/today.png')
  })
})

describe('error codes', () => {
  it('a code in the code without a row is named where it stands', () => {
    const found = faultsOf({ 'packages/desk/src/app/b.ts': `\nexport const b = () => refused('DAY_UNREADABLE')\n` })
    expect(found).toEqual([
      'packages/desk/src/app/b.ts:2  DAY_UNREADABLE has no row in docs/errors.md: say its cause and what to do',
    ])
  })

  it('a code in a type counts as well', () => {
    expect(
      faultsOf({ 'packages/science/src/c.ts': `export type C = 'NOT_CONVERGED' | 'SHAPES_DIFFER'\n` })[0],
    ).toContain('NOT_CONVERGED')
  })

  it('a code at the head of a printed line counts as well', () => {
    const line = `export const line = (what: string) => \`COMMAND_FAILED  \${what}\`\n`
    expect(faultsOf({ 'packages/desk/src/cli/d.ts': line })[0]).toContain('COMMAND_FAILED has no row')
  })

  it('a row without a code, and a code with two rows, are named', () => {
    const found = faultsOf({
      'docs/errors.md': `${sound['docs/errors.md']}| \`LONG_GONE\` | x |\n| \`FILE_EMPTY\` | x |\n`,
    })
    expect(found).toContain('docs/errors.md:7  LONG_GONE is nowhere in the code: take the row out')
    expect(found).toContain('docs/errors.md:8  FILE_EMPTY has two rows')
  })

  it('codes that others gave, names of variables and tests do not count', () => {
    const others = `export const given = ['ERR_BUFFER_TOO_LARGE', 'FST_ERR_CTP', 'SQLITE_BUSY', 'GAUGEWRIGHT_DATA']\n`
    expect(
      faultsOf({
        'packages/desk/src/app/b.ts': others,
        'packages/desk/src/app/b.test.ts': `export const t = 'ONLY_TEST'\n`,
      }),
    ).toEqual([])
  })
})

describe('commands', () => {
  it('a script and a command that do not exist are named', () => {
    const found = faultsOf({ 'docs/life.md': 'Run `npm run nothing`, then `gaugewright fly`, not `npm run check`.\n' })
    expect(found).toEqual([
      'docs/life.md:1  package.json has no script "nothing"',
      'docs/life.md:1  there is no command "gaugewright fly"',
    ])
  })

  it('a command that the README does not list is named', () => {
    const found = faultsOf({ 'packages/desk/src/cli/commands/doctor.ts': `export const d = 'doctor'\n` })
    expect(found).toEqual(['README.md:1  does not list the command doctor'])
  })

  it('README and .ci/run must hold the same line for the tests', () => {
    expect(faultsOf({ '.ci/run': 'npm test\n' })[0]).toContain('.ci/run')
  })
})

describe('decisions and sources', () => {
  it('a gap in the numbers, a wrong heading and a missing state are named', () => {
    const found = faultsOf({ 'docs/decisions/0003-two.md': '# Two\n' })
    expect(found).toHaveLength(3)
    expect(found[0]).toContain('0003-two.md:1  should bear the next number, 0002')
  })

  it('a key that docs/references.md does not define is named, in comments and in documents', () => {
    const found = faultsOf({
      'packages/science/src/d.ts': `/**\n * Source: [Other1999].\n */\nexport const d = ['[Text2001]']\n`,
      'docs/life.md': 'As in [Third2003] and `[Example2002]`.\n',
    })
    expect(found).toEqual([
      'packages/science/src/d.ts:2  [Other1999] is not in docs/references.md',
      'docs/life.md:1  [Third2003] is not in docs/references.md',
    ])
  })

  it('a source that stands twice is named', () => {
    expect(faultsOf({ 'docs/references.md': `${sound['docs/references.md']}- **[Key2010]** Again.\n` })).toEqual([
      'docs/references.md:4  [Key2010] stands twice',
    ])
  })
})
