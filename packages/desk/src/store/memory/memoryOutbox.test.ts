import { outboxPromises } from '../outboxPromises.ts'
import { openMemoryLedger } from './memoryLedger.ts'
import { openMemoryOutbox } from './memoryOutbox.ts'

outboxPromises('memory', async () => {
  const ledger = openMemoryLedger()
  return { ledger, outbox: openMemoryOutbox(ledger), dispose: async () => {} }
})
