import { urgentPromises } from '../urgentPromises.ts'
import { openMemoryUrgent } from './memoryUrgent.ts'

urgentPromises('memory', async () => ({ urgent: openMemoryUrgent(), dispose: async () => {} }))
