/** The Markdown files of the repository, read once: links, code, headings and the first cells of tables, with lines. */
import { readdirSync, readFileSync } from 'node:fs'
import { join, posix } from 'node:path'
import MarkdownIt from 'markdown-it'

interface Placed {
  text: string
  /** From 1. */
  line: number
}

export interface Document {
  /** From the root: `docs/errors.md`. */
  file: string
  text: string
  links: Placed[]
  /** Code spans, and code blocks line by line. */
  code: Placed[]
  headings: Placed[]
  /** The first cell of each row of each table, as Markdown. */
  firstCells: Placed[]
}

const skippedFolders = new Set(['node_modules', 'dist', 'fixtures', 'scratch', 'coverage'])
const markdown = new MarkdownIt()

/** @param root the folder of the repository */
export function listDocuments(root: string): Document[] {
  return listFiles(root, '').map((file) => readDocument(file, readFileSync(join(root, file), 'utf8')))
}

export function readDocument(file: string, text: string): Document {
  const document: Document = { file, text, links: [], code: [], headings: [], firstCells: [] }
  const tokens = markdown.parse(text, {})
  let line = 1
  tokens.forEach((token, index) => {
    if (token.map) line = token.map[0] + 1
    if (token.type === 'fence' || token.type === 'code_block') {
      const firstLine = token.type === 'fence' ? line + 1 : line
      for (const [row, code] of token.content.split('\n').entries())
        document.code.push({ text: code, line: firstLine + row })
    }
    if (token.type !== 'inline') return
    const before = tokens[index - 1]?.type
    if (before === 'heading_open') document.headings.push({ text: token.content, line })
    const isFirstCell = before === 'td_open' && tokens[index - 2]?.type === 'tr_open'
    if (isFirstCell) document.firstCells.push({ text: token.content, line })
    for (const part of token.children ?? []) {
      if (part.type === 'code_inline') document.code.push({ text: part.content, line })
      const address = part.attrGet(part.type === 'image' ? 'src' : 'href')
      if (address !== null) document.links.push({ text: String(address), line })
      if (part.type === 'softbreak') line += 1
    }
  })
  return document
}

function listFiles(root: string, folder: string): string[] {
  return readdirSync(join(root, folder), { withFileTypes: true })
    .sort((a, b) => (a.name < b.name ? -1 : 1))
    .flatMap((entry) => {
      const path = posix.join(folder, entry.name)
      if (entry.isDirectory()) {
        return skippedFolders.has(entry.name) || entry.name.startsWith('.') ? [] : listFiles(root, path)
      }
      return entry.name.endsWith('.md') ? [path] : []
    })
}
