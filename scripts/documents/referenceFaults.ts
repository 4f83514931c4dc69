/**
 * Keys of sources, such as `[Key2010]`: every key in a comment of the code or in a document stands once in
 * docs/references.md, as a list item that begins with the key in bold.
 */
import type { Module } from '../boundaries/listModules.ts'
import type { Fault } from './fault.ts'
import type { Document } from './listDocuments.ts'

const page = 'docs/references.md'
const key = /\[([A-Z][A-Za-z]*\d{1,5}[a-z]?)\](?!\()/g
const definition = /^- \*\*\[([^\]]+)\]\*\*/

export function referenceFaults(modules: Module[], documents: Document[]): Fault[] {
  const faults: Fault[] = []
  const defined = new Set<string>()
  const references = documents.find(({ file }) => file === page)
  references?.text.split('\n').forEach((text, index) => {
    const name = definition.exec(text)?.[1]
    if (name === undefined) return
    if (defined.has(name)) faults.push({ file: page, line: index + 1, says: `[${name}] stands twice` })
    defined.add(name)
  })
  const look = (file: string, text: string, firstLine: number) => {
    text.split('\n').forEach((words, index) => {
      for (const [, name] of words.matchAll(key)) {
        if (!defined.has(name!)) faults.push({ file, line: firstLine + index, says: `[${name}] is not in ${page}` })
      }
    })
  }
  for (const { file, comments } of modules) for (const { text, line } of comments) look(file, text, line)
  for (const { file, text } of documents) look(file, withoutCode(text), 1)
  return faults
}

/** Blanks code blocks and spans, so that an example of a key is not taken for one. */
function withoutCode(text: string): string {
  return text.replace(/```[\s\S]*?```|`[^`\n]*`/g, (code) => code.replace(/[^\n]/g, ' '))
}
