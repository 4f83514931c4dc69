/**
 * What a module imports, exports by default and reads from the world, seen on its syntax tree.
 * Type-only imports count like any other: a wall that types may climb is no wall.
 */
import { parseSync, Visitor } from 'oxc-parser'

export interface SeenImport {
  specifier: string
  /** From 1. */
  line: number
}

export interface SeenGlobal {
  /** `Math.random`, `Date`, `console`, … */
  name: string
  line: number
}

export interface ModuleSeen {
  imports: SeenImport[]
  defaultExportLines: number[]
  exportAllLines: number[]
  /** References to globals that tell the time, toss a coin or reach the outside. */
  worldly: SeenGlobal[]
  /** String literals, and of each template what stands before its first gap, with their lines. */
  strings: { text: string; line: number }[]
  comments: { text: string; line: number }[]
}

/** DOM names and the rest of Node need no list: science is compiled without either, so that they do not even type-check. */
const worldlyNames = new Set(['console', 'process', 'Date', 'globalThis'])
const worldlyMembers = new Set(['Math.random', 'Temporal.Now'])

/** @throws {Error} when the text is not TypeScript; the message names the file and what the parser said. */
export function readModule(file: string, text: string): ModuleSeen {
  const parsed = parseSync(file, text)
  const [fault] = parsed.errors
  if (fault) throw new Error(`${file}: cannot be read as TypeScript: ${fault.message}`)
  const lineOf = lineCounter(text)
  const seen: ModuleSeen = {
    imports: [],
    defaultExportLines: [],
    exportAllLines: [],
    worldly: [],
    strings: [],
    comments: [],
  }

  const addImport = (source: { value: unknown; start: number } | null) => {
    if (source && typeof source.value === 'string') {
      seen.imports.push({ specifier: source.value, line: lineOf(source.start) })
    }
  }
  /** Starts of identifiers that only name a property, so that `row.process` is not taken for the global. */
  const propertyNames = new Set<number>()
  const addWorldly = (name: string, start: number) => seen.worldly.push({ name, line: lineOf(start) })

  new Visitor({
    ImportDeclaration: (node) => addImport(node.source),
    ExportNamedDeclaration: (node) => {
      addImport(node.source)
      const isDefault = node.specifiers.some(({ exported }) => 'name' in exported && exported.name === 'default')
      if (isDefault) seen.defaultExportLines.push(lineOf(node.start))
    },
    ExportAllDeclaration: (node) => {
      addImport(node.source)
      seen.exportAllLines.push(lineOf(node.start))
    },
    ExportDefaultDeclaration: (node) => seen.defaultExportLines.push(lineOf(node.start)),
    ImportExpression: (node) => {
      if (node.source.type === 'Literal') addImport(node.source)
    },
    TSImportType: (node) => addImport(node.source),
    CallExpression: (node) => {
      const [first] = node.arguments
      if (node.callee.type === 'Identifier' && node.callee.name === 'require' && first?.type === 'Literal')
        addImport(first)
    },
    MemberExpression: (node) => {
      if (node.computed || node.property.type !== 'Identifier') return
      propertyNames.add(node.property.start)
      if (node.object.type !== 'Identifier') return
      const name = `${node.object.name}.${node.property.name}`
      if (worldlyMembers.has(name)) addWorldly(name, node.start)
    },
    Property: (node) => {
      if (!node.computed && !node.shorthand && node.key.type === 'Identifier') propertyNames.add(node.key.start)
    },
    TSPropertySignature: (node) => {
      if (!node.computed && node.key.type === 'Identifier') propertyNames.add(node.key.start)
    },
    Identifier: (node) => {
      if (worldlyNames.has(node.name) && !propertyNames.has(node.start)) addWorldly(node.name, node.start)
    },
    Literal: (node) => {
      if (typeof node.value === 'string') seen.strings.push({ text: node.value, line: lineOf(node.start) })
    },
    TemplateLiteral: (node) => {
      const [first] = node.quasis
      if (first) seen.strings.push({ text: first.value.cooked ?? '', line: lineOf(node.start) })
    },
  }).visit(parsed.program)
  seen.comments = parsed.comments.map(({ value, start }) => ({ text: value, line: lineOf(start) }))
  return seen
}

function lineCounter(text: string): (offset: number) => number {
  const lineStarts = [0]
  for (let at = text.indexOf('\n'); at !== -1; at = text.indexOf('\n', at + 1)) lineStarts.push(at + 1)
  return (offset) => {
    let low = 0
    let high = lineStarts.length
    while (high - low > 1) {
      const middle = (low + high) >> 1
      if (lineStarts[middle]! <= offset) low = middle
      else high = middle
    }
    return low + 1
  }
}
