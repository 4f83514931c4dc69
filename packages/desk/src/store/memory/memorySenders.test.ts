import { senderPromises } from '../senderPromises.ts'
import { MemorySenders } from './memorySenders.ts'

senderPromises('memory', async () => ({ senders: new MemorySenders(), close: async () => {} }))
