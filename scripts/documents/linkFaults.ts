/** Relative links lead to a file that is there, and to a heading that is in it. Addresses on the web are not visited. */
import { existsSync } from 'node:fs'
import { join, posix } from 'node:path'
import type { Fault } from './fault.ts'
import type { Document } from './listDocuments.ts'

export function linkFaults(root: string, documents: Document[]): Fault[] {
  const byFile = new Map(documents.map((document) => [document.file, document]))
  const faults: Fault[] = []
  for (const { file, links } of documents) {
    for (const { text, line } of links) {
      if (/^[a-z][a-z0-9+.-]*:/i.test(text)) continue
      const [path, heading] = decodeURI(text).split('#')
      const target = path === '' ? file : posix.normalize(posix.join(posix.dirname(file), path!))
      if (!existsSync(join(root, target))) {
        faults.push({ file, line, says: `links to ${target}, which does not exist` })
        continue
      }
      const document = byFile.get(target)
      if (heading && document && !document.headings.some(({ text: title }) => anchorOf(title) === heading)) {
        faults.push({ file, line, says: `links to the heading #${heading}, which is not in ${target}` })
      }
    }
  }
  return faults
}

/** The anchor that code hosts make of a heading: lower case, no signs, dashes for spaces. */
function anchorOf(heading: string): string {
  return heading
    .toLowerCase()
    .replace(/[^\p{L}\p{N} _-]/gu, '')
    .replace(/ /g, '-')
}
