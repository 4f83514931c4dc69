/** Decisions are numbered without a gap, `0001-short-title.md`, and each begins with its number, a title and its state. */
import { posix } from 'node:path'
import type { Fault } from './fault.ts'
import type { Document } from './listDocuments.ts'

const folder = 'docs/decisions'
const state = /^(Accepted|Proposed|Replaced) \d{4}-\d{2}-\d{2}\. Replaces (none|\d{4}(, \d{4})*)\.$/m

export function decisionFaults(documents: Document[]): Fault[] {
  const faults: Fault[] = []
  documents
    .filter(({ file }) => posix.dirname(file) === folder)
    .forEach(({ file, headings, text }, index) => {
      const add = (says: string) => faults.push({ file, line: 1, says })
      const number = String(index).padStart(4, '0')
      const name = posix.basename(file)
      if (!name.startsWith(`${number}-`)) add(`should bear the next number, ${number}: numbers neither skip nor repeat`)
      const [first] = headings
      if (!first?.text.startsWith(`${name.slice(0, 4)} `))
        add(`should begin with the heading "# ${name.slice(0, 4)} Title"`)
      const isTemplate = index === 0
      if (!isTemplate && !state.test(text)) add('should say "Accepted YYYY-MM-DD. Replaces none." below its heading')
    })
  return faults
}
