/** People as files: CSV and vCard, in and out; and who may be there twice. JSON on the wire. */
import { z } from 'zod'

export const peopleFormatSchema = z.enum(['csv', 'vcard'])
export const importPeopleAskSchema = z.object({
  format: peopleFormatSchema,
  text: z.string().min(1, 'a file').max(200_000),
  /** Take the good rows and leave the others. */
  keepGood: z.boolean().default(false),
})
export type ImportPeopleAsk = z.infer<typeof importPeopleAskSchema>

export const importedPeopleSchema = z.object({
  added: z.number().int(),
  changed: z.number().int(),
  same: z.number().int(),
  /** Where, what was seen, what is wanted. Where any stands and `keepGood` is off, nothing was taken. */
  refused: z.array(z.object({ line: z.number().int(), seen: z.string(), advice: z.string() })),
})
export type ImportedPeople = z.infer<typeof importedPeopleSchema>

export const exportPeopleAskSchema = z.object({ format: peopleFormatSchema.default('csv') })
export type ExportPeopleAsk = z.infer<typeof exportPeopleAskSchema>

export const duplicatePeopleSchema = z.object({
  pairs: z.array(
    z.object({
      a: z.object({ about: z.string(), name: z.string() }),
      b: z.object({ about: z.string(), name: z.string() }),
      /** What speaks for one person. */
      reasons: z.array(z.enum(['same mail', 'same telephone', 'same gauge', 'same name', 'like name'])),
    }),
  ),
})
export type DuplicatePeople = z.infer<typeof duplicatePeopleSchema>
