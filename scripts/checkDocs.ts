/** Prints everything in the documents that is not so: dead links, codes without a row, commands that do not exist. */
import { wordFault } from './documents/fault.ts'
import { findFaults } from './documents/findFaults.ts'
import { repositoryRoot } from './repositoryRoot.ts'

const { faults, documentCount } = findFaults(repositoryRoot)
for (const fault of faults) console.log(wordFault(fault))
console.log(`documents: ${documentCount} files, ${faults.length} faults`)
process.exitCode = faults.length === 0 ? 0 : 1
