import { storePromises } from '../storePromises.ts'
import { openMemoryLedger } from './memoryLedger.ts'

storePromises('memory', async () => ({ ledger: openMemoryLedger(), dispose: async () => {} }))
