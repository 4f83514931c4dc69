/**
 * Where the public test networks lie: GAUGEWRIGHT_DATA, or `../shared/data` beside any folder above this file.
 * They are not shipped; whoever lacks them gets a bench that says what it skipped.
 */
import { existsSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'

/** @returns the folder, or null when there is none on this machine. */
export function findDataFolder(environment: { GAUGEWRIGHT_DATA?: string } = process.env): string | null {
  const named = environment.GAUGEWRIGHT_DATA
  if (named !== undefined && named !== '') return existsSync(named) ? named : null
  let folder = dirname(fileURLToPath(import.meta.url))
  for (;;) {
    const candidate = join(folder, '..', 'shared', 'data')
    if (existsSync(candidate)) return candidate
    const above = dirname(folder)
    if (above === folder) return null
    folder = above
  }
}
