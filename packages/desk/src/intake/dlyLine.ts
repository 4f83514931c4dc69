/**
 * One line of a GHCN-Daily `.dly` file: one element of one station in one month, 31 values of eight columns. Columns are
 * counted from 1: station 1-11, year 12-15, month 16-17, element 18-21; day d at 22 + 8(d-1): value (5), measurement flag,
 * quality flag, source flag. -9999 is missing, also on days that do not exist. Source: the GHCN-Daily readme [Menne2012].
 */
import { daysInMonth, type EpochDay, epochDayFromDate } from '@gaugewright/science'
import { IntakeRefusal } from '../ports/intakeRefusal.ts'
import { placed } from './refusal.ts'
import type { TextLine } from './textLines.ts'

export const DLY_LINE_LENGTH = 269
const HEADER_LENGTH = 21
const FIELD_LENGTH = 8
const MISSING = -9999
/** No daily reading is older: an earlier year is mistyped. */
const EARLIEST_YEAR = 1700

export interface DlyLine {
  station: string
  element: string
  /** Of the first of the month. */
  firstDay: EpochDay
  dayCount: number
}

export interface DlyValue {
  value: number
  measurementFlag: string
  qualityFlag: string
}

const linePattern = /^([A-Z]{2}[A-Z0-9_-]{9})(\d{4})(\d{2})([A-Z0-9]{4})/

/** @throws {IntakeRefusal} DLY_LAYOUT */
export function dlyLine(path: string, { line, text }: TextLine): DlyLine {
  const parts = linePattern.exec(text)
  const month = Number(parts?.[3])
  if (parts === null || month < 1 || month > 12 || Number(parts[2]) < EARLIEST_YEAR) {
    throw new IntakeRefusal(
      'DLY_LAYOUT',
      placed({ path, line, field: 'columns 1-21' }, text.slice(0, HEADER_LENGTH), 'station, year, month and element'),
      'Take the file as the archive gives it, in its fixed columns.',
    )
  }
  const year = Number(parts[2])
  return {
    station: parts[1] ?? '',
    element: parts[4] ?? '',
    firstDay: epochDayFromDate(year, month, 1),
    dayCount: daysInMonth(year, month),
  }
}

/** First of the eight columns of a day of the month, from 0. */
export function dlyColumn(dayOfMonth: number): number {
  return HEADER_LENGTH + FIELD_LENGTH * (dayOfMonth - 1)
}

/**
 * The value of a day of the month (1-31), or null where it is missing.
 * @throws {IntakeRefusal} DLY_LAYOUT where there is no whole number, or the line ends too soon
 */
export function dlyValue(path: string, { line, text }: TextLine, dayOfMonth: number): DlyValue | null {
  const from = dlyColumn(dayOfMonth)
  const digits = text.slice(from, from + 5)
  const value = /^ *-?\d+$/.test(digits) && digits.length === 5 ? Number(digits) : Number.NaN
  if (Number.isNaN(value)) {
    throw new IntakeRefusal(
      'DLY_LAYOUT',
      placed(
        { path, line, field: `columns ${from + 1}-${from + 5}` },
        digits,
        'a whole number in five columns, -9999 for none',
      ),
      'Take the file as the archive gives it, in its fixed columns.',
    )
  }
  if (value === MISSING) return null
  return { value, measurementFlag: (text[from + 5] ?? ' ').trim(), qualityFlag: (text[from + 6] ?? ' ').trim() }
}
