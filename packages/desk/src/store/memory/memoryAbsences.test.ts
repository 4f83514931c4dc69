import { absencePromises } from '../absencePromises.ts'
import { memoryAbsences } from './memoryAbsences.ts'
import { openMemoryLedger } from './memoryLedger.ts'

absencePromises('memory', async () => {
  const ledger = openMemoryLedger()
  return { ledger, absences: memoryAbsences(ledger), dispose: async () => {} }
})
