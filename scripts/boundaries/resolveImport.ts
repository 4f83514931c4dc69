/** Where an import leads: another file of ours, a package of ours, a module of Node, or a package from outside. */
import { builtinModules } from 'node:module'
import { posix } from 'node:path'

export type ImportTarget =
  | { kind: 'file'; file: string }
  | { kind: 'ours'; packageName: string; isDeep: boolean }
  | { kind: 'node'; name: string }
  | { kind: 'outside'; name: string }

const ourScope = '@gaugewright/'
const builtins = new Set(builtinModules)

/** @param from path of the importing file from the root */
export function resolveImport(from: string, specifier: string): ImportTarget {
  const path = specifier.split('?')[0]!
  if (path.startsWith('.')) return { kind: 'file', file: posix.join(posix.dirname(from), path) }
  if (path.startsWith(ourScope)) {
    const [packageName, ...deeper] = path.slice(ourScope.length).split('/')
    return { kind: 'ours', packageName: packageName!, isDeep: deeper.length > 0 }
  }
  if (path.startsWith('node:') || builtins.has(path)) return { kind: 'node', name: path }
  const parts = path.split('/')
  return { kind: 'outside', name: path.startsWith('@') ? parts.slice(0, 2).join('/') : parts[0]! }
}
