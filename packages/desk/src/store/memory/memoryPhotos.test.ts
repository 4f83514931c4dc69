import { photoPromises } from '../photoPromises.ts'
import { openMemoryPhotos } from './memoryPhotos.ts'

photoPromises('memory', async (quota) => ({ photos: openMemoryPhotos(quota), dispose: async () => undefined }))
