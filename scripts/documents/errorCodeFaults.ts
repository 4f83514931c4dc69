/**
 * Error codes in the code and on the page of errors, compared both ways.
 * The convention: in the product's sources, every string of the shape `WORDS_IN_CAPITALS` (two words at least) is an
 * error code, in values and in types alike, alone or before two blanks as a printed line has it, unless it begins like a
 * name that somebody else gave (below). On the page, every code is the first cell of one row, in backquotes.
 */
import type { Module } from '../boundaries/listModules.ts'
import type { Fault } from './fault.ts'
import type { Document } from './listDocuments.ts'

const page = 'docs/errors.md'
const productPackages = new Set(['science', 'contract', 'desk', 'web'])
const codeShape = /^([A-Z][A-Z0-9]*(?:_[A-Z0-9]+)+)(?:$| {2})/
/** Codes of Node, Fastify, SQLite and zlib; names of environment variables. */
const givenByOthers = /^(ERR|FST|SQLITE|Z|GAUGEWRIGHT|NODE|CHROMIUM)_/

export function errorCodeFaults(modules: Module[], documents: Document[]): Fault[] {
  const inCode = new Map<string, { file: string; line: number }>()
  for (const { file, packageName, isTest, strings } of modules) {
    if (!productPackages.has(packageName) || isTest) continue
    for (const { text, line } of strings) {
      const code = codeShape.exec(text)?.[1]
      if (code && !givenByOthers.test(code) && !inCode.has(code)) inCode.set(code, { file, line })
    }
  }
  const faults: Fault[] = []
  const onPage = new Set<string>()
  for (const { text, line } of documents.find(({ file }) => file === page)?.firstCells ?? []) {
    const code = text.replace(/^`(.*)`$/, '$1')
    if (onPage.has(code)) faults.push({ file: page, line, says: `${code} has two rows` })
    onPage.add(code)
    if (!inCode.has(code)) faults.push({ file: page, line, says: `${code} is nowhere in the code: take the row out` })
  }
  for (const [code, place] of inCode) {
    if (!onPage.has(code))
      faults.push({ ...place, says: `${code} has no row in ${page}: say its cause and what to do` })
  }
  return faults
}
