import { outgoingSettingsPromises } from '../outgoingSettingsPromises.ts'
import { openMemoryLedger } from './memoryLedger.ts'
import { openMemoryOutgoingSettings } from './memoryOutgoingSettings.ts'

outgoingSettingsPromises('memory', async () => {
  const ledger = openMemoryLedger()
  return { ledger, settings: openMemoryOutgoingSettings(ledger), dispose: async () => {} }
})
