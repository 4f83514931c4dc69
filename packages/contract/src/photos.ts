/** Photos that go with an urgent report. Nothing of where or with what they were taken is kept: the pixels alone. */
import { z } from 'zod'
import { photoLimits } from './photoLimits.ts'

const base64Length = Math.ceil(photoLimits.bytes / 3) * 4

export const addPhotoAskSchema = z.object({
  /** The id that the phone gave the urgent report. */
  reportId: z.string().min(1).max(100),
  /** A whole JPEG, PNG or WebP file. */
  imageBase64: z.base64().min(1).max(base64Length),
})

export const photoSchema = z.object({
  /** SHA-256 of the file as kept, 64 hexadecimal digits: its name, and its last part of the path that serves it. */
  sha256: z.string().regex(/^[0-9a-f]{64}$/),
  reportId: z.string(),
  /** Of the file as kept, a JPEG. */
  bytes: z.number().int(),
  widthPx: z.number().int(),
  heightPx: z.number().int(),
  receivedAtUtc: z.string(),
})

export const photosOfReportSchema = z.object({ photos: z.array(photoSchema) })

export type AddPhotoAsk = z.infer<typeof addPhotoAskSchema>
export type Photo = z.infer<typeof photoSchema>
export type PhotosOfReport = z.infer<typeof photosOfReportSchema>
