/**
 * Days as files write them. ISO unless the user names another order: 03/04 is never guessed. Years have four digits.
 * Gives epoch days (whole days since 1970-01-01).
 */
import { type EpochDay, epochDayFromDate, parseIsoDay } from '@gaugewright/science'
import type { DayFormat } from '../ports/intakeFiles.ts'

const patterns: Record<
  Exclude<DayFormat, 'iso'>,
  { pattern: RegExp; order: readonly ['y' | 'm' | 'd', 'y' | 'm' | 'd', 'y' | 'm' | 'd'] }
> = {
  yyyymmdd: { pattern: /^(\d{4})(\d{2})(\d{2})$/, order: ['y', 'm', 'd'] },
  'd/m/y': { pattern: /^(\d{1,2})[/.-](\d{1,2})[/.-](\d{4})$/, order: ['d', 'm', 'y'] },
  'm/d/y': { pattern: /^(\d{1,2})[/.-](\d{1,2})[/.-](\d{4})$/, order: ['m', 'd', 'y'] },
  'y/m/d': { pattern: /^(\d{4})[/.-](\d{1,2})[/.-](\d{1,2})$/, order: ['y', 'm', 'd'] },
}

export const dayFormatWords: Record<DayFormat, string> = {
  iso: 'a date like 2026-03-29',
  yyyymmdd: 'a date like 20260329',
  'd/m/y': 'a date like 29/03/2026',
  'm/d/y': 'a date like 03/29/2026',
  'y/m/d': 'a date like 2026/03/29',
}

/** 1700-01-01: no daily gauge reading is older, so an earlier year is mistyped. */
export const earliestDay = epochDayFromDate(1700, 1, 1)

/** The epoch day, or null where the text is not a real date in that format. */
export function readDay(text: string, format: DayFormat): EpochDay | null {
  if (format === 'iso') return parseIsoDay(text)
  const { pattern, order } = patterns[format]
  const parts = pattern.exec(text)
  if (parts === null) return null
  const value = { y: 0, m: 0, d: 0 }
  order.forEach((name, index) => {
    value[name] = Number(parts[index + 1])
  })
  const iso = `${String(value.y).padStart(4, '0')}-${String(value.m).padStart(2, '0')}-${String(value.d).padStart(2, '0')}`
  return parseIsoDay(iso) === null ? null : epochDayFromDate(value.y, value.m, value.d)
}
