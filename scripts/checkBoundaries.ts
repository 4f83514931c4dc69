/** Prints every import, export or global that breaks a wall, with the way out. Exit 1 when there is any. */
import { findViolations } from './boundaries/findViolations.ts'
import { wordViolation } from './boundaries/violation.ts'
import { repositoryRoot } from './repositoryRoot.ts'

const { violations, fileCount } = findViolations(repositoryRoot)
for (const violation of violations) console.log(wordViolation(violation))
console.log(`boundaries: ${fileCount} files, ${violations.length} violations`)
process.exitCode = violations.length === 0 ? 0 : 1
