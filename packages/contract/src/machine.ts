/**
 * The machine interface, version 1: what a sender's program may send and read. The same shapes validate what comes in and
 * make the OpenAPI description; a field is added to them, never taken away or given another meaning.
 */
import { z } from 'zod'
import { problemSchema } from './today.ts'

export const mostReadingsACall = 10_000

const day = z.iso
  .date()
  .meta({ description: 'An observing day, named by the date on which it ends.', example: '2026-05-30' })
const unit = z.enum(['mm', 'in']).meta({ description: 'Unit of the amount.' })

export const machineReadingSchema = z
  .strictObject({
    gauge: z.string().min(1).max(40).meta({ description: 'Code of the gauge.', example: 'G0001' }),
    day: day.optional().meta({ description: 'Observing day; may be left out where readAtUtc is given.' }),
    firstDay: day.optional().meta({ description: 'First day of a total over several days; left out for one day.' }),
    readAtUtc: z.iso
      .datetime()
      .optional()
      .meta({ description: 'When the gauge was read; the reading hour of the day if left out.' }),
    amount: z.string().min(1).max(40).meta({
      description: 'As it was read, with its decimals: 0.40, 0, or T for a trace.',
      example: '0.40',
    }),
    unit,
    remark: z.string().max(1000).optional(),
  })
  .meta({ id: 'Reading', description: 'What one gauge caught.' })
export type MachineReading = z.infer<typeof machineReadingSchema>

const keepGood = z
  .boolean()
  .default(false)
  .meta({ description: 'Take the good rows and answer with the refused ones; otherwise all are taken or none.' })

export const sendBulkAskSchema = z
  .strictObject({ readings: z.array(machineReadingSchema).min(1).max(mostReadingsACall), keepGood })
  .meta({ id: 'Bulk' })
export type SendBulkAsk = z.infer<typeof sendBulkAskSchema>

export const sendShefAskSchema = z
  .strictObject({
    text: z.string().min(1).max(2_000_000).meta({ description: 'SHEF .A, .AR, .B and .E, with its line breaks.' }),
    keepGood,
  })
  .meta({ id: 'ShefText' })
export type SendShefAsk = z.infer<typeof sendShefAskSchema>

export const rowStatuses = ['stored', 'correcting', 'already', 'refused', 'not taken'] as const
export const rowAnswerSchema = z
  .object({
    row: z.number().int().meta({ description: 'From 1, in the order sent; of SHEF, the line.' }),
    status: z.enum(rowStatuses).meta({
      description:
        'stored; correcting: stored in the place of an earlier amount, which is kept; already: the same is there; refused; not taken: good, but held back with the refused ones.',
    }),
    problem: problemSchema.optional(),
  })
  .meta({ id: 'RowAnswer' })
export type RowAnswer = z.infer<typeof rowAnswerSchema>

export const bulkAnswerSchema = z
  .object({
    taken: z.boolean().meta({ description: 'False where one row was refused and none was taken.' }),
    stored: z.number().int(),
    correcting: z.number().int(),
    already: z.number().int(),
    refused: z.number().int(),
    receivedAtUtc: z.string(),
    rows: z.array(rowAnswerSchema),
    notes: z.array(z.string()).meta({ description: 'What was passed over on purpose, and warnings.' }),
  })
  .meta({ id: 'BulkAnswer' })
export type BulkAnswer = z.infer<typeof bulkAnswerSchema>

/** Answered with 422 where a row was refused and the sender did not ask to keep the good ones. */
export const rowsRefusedSchema = problemSchema
  .extend({ answer: bulkAnswerSchema })
  .meta({ id: 'RowsRefused', description: 'Nothing was taken: which rows were refused, and why.' })
export type RowsRefused = z.infer<typeof rowsRefusedSchema>

export const machineNetworkSchema = z
  .object({
    id: z.string(),
    name: z.string(),
    timeZone: z.string(),
    readingTime: z.string(),
    unit,
    firstDay: day.nullable(),
    lastDay: day.nullable(),
  })
  .meta({ id: 'Network' })
export type MachineNetwork = z.infer<typeof machineNetworkSchema>

export const machineGaugesSchema = z
  .object({
    gauges: z.array(
      z.object({
        gauge: z.string(),
        name: z.string(),
        latDeg: z.number().meta({ description: 'Rounded to two decimals.' }),
        lonDeg: z.number().meta({ description: 'Rounded to two decimals.' }),
        elevationM: z.number().nullable(),
        area: z.string().nullable(),
        openedOn: day.nullable(),
        closedOn: day.nullable(),
      }),
    ),
  })
  .meta({ id: 'Gauges' })
export type MachineGauges = z.infer<typeof machineGaugesSchema>

export const acceptedPageAskSchema = z.strictObject({
  from: day.optional().meta({ description: 'First day; the latest one if left out.' }),
  to: day.optional().meta({ description: 'Last day; the same as `from` if left out. Answered 31 days at a time.' }),
})
export type AcceptedPageAsk = z.infer<typeof acceptedPageAskSchema>

export const acceptedPageSchema = z
  .object({
    from: day,
    to: day,
    next: z.string().nullable().meta({ description: 'Path of the next page.' }),
    rows: z.array(
      z.object({
        gauge: z.string(),
        day,
        firstDay: day,
        amountUm: z.number().int().meta({ description: 'Whole micrometres: 0.01 in is 254, 0.1 mm is 100.' }),
        isTrace: z.boolean(),
        readingId: z.string(),
        amended: z.boolean().meta({ description: 'A decision gave another amount or other days than were read.' }),
      }),
    ),
  })
  .meta({ id: 'AcceptedPage' })
export type AcceptedPage = z.infer<typeof acceptedPageSchema>

export const machineRollSchema = z
  .object({
    day,
    rows: z.array(
      z.object({
        gauge: z.string(),
        answer: z.string().meta({ description: 'read, read late, multi-day still open, away or silent.' }),
        readingId: z.string().nullable(),
        acceptedUm: z.number().int().nullable(),
        isTrace: z.boolean(),
        days: z.number().int(),
      }),
    ),
  })
  .meta({ id: 'Roll' })
export type MachineRoll = z.infer<typeof machineRollSchema>

export const machineFindingsSchema = z
  .object({
    day,
    rows: z.array(
      z.object({
        gauge: z.string(),
        readingId: z.string(),
        standsOdds: z.number().meta({ description: 'Odds that the reading stands.' }),
        mistake: z.string().nullable().meta({ description: 'The likeliest explanation where it does not stand.' }),
        mistakeOdds: z.number().nullable(),
        proposedUm: z.number().int().nullable(),
        decision: z.string().nullable(),
      }),
    ),
  })
  .meta({ id: 'Findings' })
export type MachineFindings = z.infer<typeof machineFindingsSchema>

export const machineProblemSchema = problemSchema.meta({
  id: 'Problem',
  description: 'What was wrong: a code, what was seen, and what to do.',
})
