/**
 * Rain readings of a file of SHEF. Held whole while it is read: a message may correct what stands before it. Every line
 * that cannot be read is refused by its place; elements other than rain over whole days are counted as passed over.
 */
import { type ShefProblem, type ShefReading, shefReadings } from '@gaugewright/science'
import type { ReadingRow, ReadingStream, ShefAsk } from '../ports/intakeFiles.ts'
import { IntakeRefusal } from '../ports/intakeRefusal.ts'
import { givenTwice, MAX_SPAN_DAYS, readingTwice } from './readingRows.ts'
import { placed } from './refusal.ts'
import { textBlocks } from './textBlocks.ts'

const MOST_CHARACTERS = 64 * 1024 * 1024

/** The start of a file that holds messages. */
export const shefPattern = /^\.[ABE]R?[ \t]/m

export async function openShefFile(path: string, ask: ShefAsk): Promise<ReadingStream> {
  let text = ''
  for await (const block of textBlocks(path, ask)) {
    text += block
    if (text.length > MOST_CHARACTERS) {
      throw new IntakeRefusal('TABLE_TOO_LARGE', `${path} holds more than 64 MB of SHEF.`, 'Split it between messages.')
    }
  }
  const passedOver: Record<string, number> = {}
  return { header: null, delimiter: ':', rows: shefBlocks(path, text, ask, passedOver), passedOver }
}

async function* shefBlocks(
  path: string,
  text: string,
  ask: ShefAsk,
  passedOver: Record<string, number>,
): AsyncGenerator<ReadingRow[]> {
  const { readings, problems, passedOver: passed } = shefReadings(text, ask)
  Object.assign(passedOver, passed)
  const refusals = new Map<number, string[]>()
  const refuse = (line: number, refusal: IntakeRefusal): void => {
    if (ask.onRefused === undefined) throw refusal
    refusals.set(line, [...(refusals.get(line) ?? []), refusal.problem.seen])
  }
  for (const problem of problems) {
    if (problem.severity === 'refused') refuse(problem.line, refusalOf(path, problem))
    else passedOver[`warned: ${problem.code}`] = (passedOver[`warned: ${problem.code}`] ?? 0) + 1
  }
  const rows: ReadingRow[] = []
  for (const reading of readings) {
    try {
      const row = rowFrom(path, reading, ask)
      if (row === 'passed over') continue
      if (row !== 'twice') rows.push(row)
      else passedOver[givenTwice] = (passedOver[givenTwice] ?? 0) + 1
    } catch (error) {
      if (!(error instanceof IntakeRefusal)) throw error
      refuse(reading.line, error)
    }
  }
  const lines = refusals.size === 0 ? [] : text.split(/\r\n|\n|\r/)
  for (const [line, reasons] of [...refusals].sort(([one], [other]) => one - other)) {
    ask.onRefused?.({ line, fields: [lines[line - 1] ?? ''], reason: reasons.join(' ') })
  }
  if (rows.length > 0) yield rows
}

function rowFrom(path: string, reading: ShefReading, ask: ShefAsk): ReadingRow | 'twice' | 'passed over' {
  const { line, column, location, firstDay, lastDay, observedAtUtcMs, amountUm, isTrace, unit, text, remark } = reading
  const place = { path, line, field: `column ${column}` }
  const gauge = ask.gaugeIndex(location)
  if (gauge === null) {
    const advice = 'Mend the location, or import that gauge first.'
    throw new IntakeRefusal('GAUGE_UNKNOWN', placed(place, location, 'the code of a known gauge'), advice)
  }
  if (gauge < 0) return 'passed over'
  if (ask.latestDay !== undefined && lastDay > ask.latestDay) {
    throw new IntakeRefusal('DAY_NOT_VALID', placed(place, text, 'a day that has already come'), 'Mend the date.')
  }
  const spanDays = lastDay - firstDay + 1
  if (spanDays > MAX_SPAN_DAYS) {
    throw new IntakeRefusal('SPAN_NOT_VALID', placed(place, text, `at most ${MAX_SPAN_DAYS} days`), 'Mend the span.')
  }
  const noted = ask.note?.(gauge, lastDay, spanDays, amountUm, isTrace) ?? 'new'
  if (noted === 'other') throw readingTwice(place, text)
  if (noted === 'same') return 'twice'
  return { line, gauge, firstDay, lastDay, endsAtUtcMs: observedAtUtcMs, amountUm, isTrace, unit, text, remark }
}

function refusalOf(path: string, { code, line, column, seen, wanted }: ShefProblem): IntakeRefusal {
  const place = { path, line, field: `column ${column}` }
  return new IntakeRefusal(code, placed(place, seen, wanted), 'Mend the line.')
}
