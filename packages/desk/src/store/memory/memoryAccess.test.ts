import { accessPromises } from '../accessPromises.ts'
import { openMemoryAccess } from './memoryAccess.ts'

accessPromises('memory', async () => ({ access: openMemoryAccess(), dispose: async () => {} }))
