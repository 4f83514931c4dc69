/** All checks of the documents. */
import { listModules } from '../boundaries/listModules.ts'
import { commandFaults } from './commandFaults.ts'
import { decisionFaults } from './decisionFaults.ts'
import { errorCodeFaults } from './errorCodeFaults.ts'
import type { Fault } from './fault.ts'
import { linkFaults } from './linkFaults.ts'
import { listDocuments } from './listDocuments.ts'
import { referenceFaults } from './referenceFaults.ts'

/** @param root the folder of the repository */
export function findFaults(root: string): { faults: Fault[]; documentCount: number } {
  const modules = listModules(root)
  const documents = listDocuments(root)
  const faults = [
    ...linkFaults(root, documents),
    ...errorCodeFaults(modules, documents),
    ...commandFaults(root, documents),
    ...decisionFaults(documents),
    ...referenceFaults(modules, documents),
  ]
  return { faults, documentCount: documents.length }
}
