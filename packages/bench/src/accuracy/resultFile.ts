/** The figures as a file: what is not known (NaN) is null in JSON, and NaN again when read. */
import { readFileSync, writeFileSync } from 'node:fs'
import { injectedSetNames } from '../data/loadInjected.ts'
import type { SetResult } from './runSet.ts'

export function writeResults(path: string, results: readonly SetResult[]): void {
  const text = JSON.stringify(results, (key, value) => (key === 'crpsEachMm' ? undefined : value), 1)
  writeFileSync(path, text)
}

/** Where null means that there is none, not that a number is unknown. */
const nullable = new Set(['dayAfter', 'sameMorning', 'expectation', 'mistake'])

/**
 * @returns the networks of all files in their usual order; of a network that stands in several files, the last
 * @throws {Error} a file that lacks what plots need (names it)
 */
export function readResults(paths: readonly string[]): SetResult[] {
  const bySet = new Map<string, SetResult>()
  for (const path of paths) {
    const results: SetResult[] = JSON.parse(readFileSync(path, 'utf8'), (key, value) =>
      value === null && !nullable.has(key) ? Number.NaN : value,
    )
    for (const result of results) {
      if (result.network === undefined || result.ours === undefined)
        throw new Error(`${path} was not written by this bench: make it anew with bench:accuracy --json ${path}`)
      bySet.set(result.set, result)
    }
  }
  return injectedSetNames.flatMap((name) => bySet.get(name) ?? [])
}
