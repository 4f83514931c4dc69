/** Letters to people, from templates that the coordinator edits. JSON on the wire. */
import { z } from 'zod'
import { aboutPersonSchema } from './contacts.ts'

/** Occasions on which the desk writes to one person. */
export const letterSteps = [
  'offer received',
  'questions',
  'site agreed',
  'gauge sent',
  'drills',
  'first reading',
  'missed',
  'refresher',
  'survey',
  'thanks',
  'leaf',
] as const
export const letterStepSchema = z.enum(letterSteps)
export type LetterStep = z.infer<typeof letterStepSchema>

/** What stands in braces in a template, and is filled for each person. */
export const letterPlaceholders = ['name', 'network', 'coordinator', 'gauge', 'code', 'link', 'occasion'] as const
export type LetterPlaceholder = (typeof letterPlaceholders)[number]

const language = z.enum(['en', 'es'])
export const letterTemplateSchema = z.object({
  step: letterStepSchema,
  language,
  subject: z.string(),
  text: z.string(),
  /** Whether it is the text that came with the desk. */
  isUsual: z.boolean(),
  versions: z.array(
    z.object({ id: z.string(), atUtc: z.string(), by: z.string(), subject: z.string(), text: z.string() }),
  ),
})
export type LetterTemplate = z.infer<typeof letterTemplateSchema>
export const letterTemplatesSchema = z.object({ templates: z.array(letterTemplateSchema) })
export type LetterTemplates = z.infer<typeof letterTemplatesSchema>

export const setLetterAskSchema = z.object({
  step: letterStepSchema,
  language,
  subject: z.string().trim().min(1, 'a subject').max(200),
  text: z.string().trim().min(1, 'a text').max(8000),
})
export type SetLetterAsk = z.infer<typeof setLetterAskSchema>

export const previewLetterAskSchema = z.object({
  about: aboutPersonSchema,
  step: letterStepSchema,
  occasion: z.string().max(500).optional(),
})
export const letterPreviewSchema = z.object({
  about: z.string(),
  step: letterStepSchema,
  language,
  /** Null where the person has no mail address: print it, or telephone. */
  to: z.string().nullable(),
  subject: z.string(),
  text: z.string(),
  /** Whether mail is set up at the desk. */
  canSend: z.boolean(),
})
export type PreviewLetterAsk = z.infer<typeof previewLetterAskSchema>
export type LetterPreview = z.infer<typeof letterPreviewSchema>

export const sendLetterAskSchema = z.object({
  about: aboutPersonSchema,
  step: letterStepSchema,
  /** Made by the screen: the same letter twice is one. */
  id: z.string().min(1).max(100),
  subject: z.string().trim().min(1).max(200),
  text: z.string().trim().min(1).max(8000),
})
export type SendLetterAsk = z.infer<typeof sendLetterAskSchema>
