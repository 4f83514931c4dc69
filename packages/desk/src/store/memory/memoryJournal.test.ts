import { journalPromises } from '../journalPromises.ts'
import { memoryJournal } from './memoryJournal.ts'
import { openMemoryLedger } from './memoryLedger.ts'

journalPromises('memory', async () => {
  const ledger = openMemoryLedger()
  return { ledger, journal: memoryJournal(ledger), dispose: async () => {} }
})
