/**
 * Commands that the documents name are there: `npm run …` in package.json, `gaugewright …` among the commands.
 * The README lists every command, and .ci/run does what the README tells a stranger.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Fault } from './fault.ts'
import type { Document } from './listDocuments.ts'

const commandFolder = 'packages/desk/src/cli/commands'
const testCommand = 'npm ci && npm run check'

export function commandFaults(root: string, documents: Document[]): Fault[] {
  const { scripts } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'))
  const commands = commandNames(root)
  const faults: Fault[] = []
  for (const { file, code } of documents) {
    for (const { text, line } of code) {
      for (const [, name] of text.matchAll(/\bnpm run ([\w:-]+)(?! -w)/g)) {
        const isOfPackage = text.includes(`npm run ${name} -w `)
        if (!isOfPackage && !(name! in scripts))
          faults.push({ file, line, says: `package.json has no script "${name}"` })
      }
      for (const [, name] of text.matchAll(/(?:^|[\s$])gaugewright ([a-z][\w-]*)/g)) {
        if (!commands.has(name!)) faults.push({ file, line, says: `there is no command "gaugewright ${name}"` })
      }
    }
  }
  const readme = documents.find(({ file }) => file === 'README.md')
  if (!readme) return [...faults, { file: 'README.md', line: 1, says: 'is missing' }]
  for (const name of commands) {
    const isListed = readme.firstCells.some(({ text }) => new RegExp(`\`${name}\\b`).test(text))
    if (!isListed) faults.push({ file: 'README.md', line: 1, says: `does not list the command ${name}` })
  }
  const ci = join(root, '.ci/run')
  const sameInBoth =
    readme.code.some(({ text }) => text.trim() === testCommand) &&
    existsSync(ci) &&
    readFileSync(ci, 'utf8').split('\n').includes(testCommand)
  if (!sameInBoth)
    faults.push({ file: '.ci/run', line: 1, says: `and README.md must both hold the line "${testCommand}"` })
  return faults
}

/** One command a file, named after it. */
function commandNames(root: string): Set<string> {
  const folder = join(root, commandFolder)
  if (!existsSync(folder)) return new Set()
  return new Set(
    readdirSync(folder)
      .filter((name) => name.endsWith('.ts') && !name.endsWith('.test.ts'))
      .map((name) => name.slice(0, -'.ts'.length)),
  )
}
