/** Big open data sets that are not part of the repository: beside it in `shared/data`, or where GAUGEWRIGHT_DATA says. */
import { existsSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'

/** The folder, or null where there is none: then a test skips, and says so. */
export function sharedData(): string | null {
  const named = process.env.GAUGEWRIGHT_DATA
  if (named !== undefined) return existsSync(named) ? named : null
  for (let folder = dirname(fileURLToPath(import.meta.url)); ; folder = dirname(folder)) {
    const found = join(folder, 'shared', 'data')
    if (existsSync(join(found, 'florida-daily'))) return found
    if (dirname(folder) === folder) return null
  }
}
