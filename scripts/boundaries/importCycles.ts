/** Files that import each other in a ring, types included. One violation a ring, at the file that comes first by name. */
import type { Module } from './listModules.ts'
import { resolveImport } from './resolveImport.ts'
import type { Violation } from './violation.ts'

interface Edge {
  to: string
  line: number
}

export function importCycles(modules: Module[]): Violation[] {
  const edges = new Map(modules.map((module) => [module.file, [] as Edge[]]))
  for (const { file, imports } of modules) {
    for (const { specifier, line } of imports) {
      const target = resolveImport(file, specifier)
      if (target.kind === 'file' && edges.has(target.file)) edges.get(file)!.push({ to: target.file, line })
    }
  }
  const found: Violation[] = []
  const inKnownRing = new Set<string>()
  for (const file of [...edges.keys()].sort()) {
    if (inKnownRing.has(file)) continue
    const ring = shortestRing(edges, file)
    if (!ring) continue
    for (const member of ring) inKnownRing.add(member)
    const line = edges.get(file)!.find((edge) => edge.to === (ring[1] ?? file))!.line
    found.push({
      file,
      line,
      rule: `imports form a ring: ${[...ring, file].map(shortName).join(' -> ')}`,
      wayOut: 'Move what both need into a file that imports neither.',
    })
  }
  return found
}

/** Breadth first from a file back to itself. @returns the files of the ring, starting with it, or null */
function shortestRing(edges: Map<string, Edge[]>, start: string): string[] | null {
  const cameFrom = new Map<string, string>()
  const queue = [start]
  for (const file of queue) {
    for (const { to } of edges.get(file)!) {
      if (to === start) return pathTo(cameFrom, start, file)
      if (cameFrom.has(to)) continue
      cameFrom.set(to, file)
      queue.push(to)
    }
  }
  return null
}

function pathTo(cameFrom: Map<string, string>, start: string, end: string): string[] {
  const path = [end]
  while (path[0] !== start) path.unshift(cameFrom.get(path[0]!)!)
  return path
}

function shortName(file: string): string {
  return file.slice(file.lastIndexOf('/') + 1)
}
