import { isoFromEpochDay } from '@gaugewright/science'
import { expect, it } from 'vitest'
import type { DayFormat } from '../ports/intakeFiles.ts'
import { readDay } from './dayText.ts'

const iso = (text: string, format: DayFormat): string | null => {
  const day = readDay(text, format)
  return day === null ? null : isoFromEpochDay(day)
}

it.each([
  ['2026-03-04', 'iso', '2026-03-04'],
  ['20260304', 'yyyymmdd', '2026-03-04'],
  ['04/03/2026', 'd/m/y', '2026-03-04'],
  ['4.3.2026', 'd/m/y', '2026-03-04'],
  ['3-4-2026', 'm/d/y', '2026-03-04'],
  ['2026/3/4', 'y/m/d', '2026-03-04'],
  ['29/02/2028', 'd/m/y', '2028-02-29'],
] as const)('reads %s as %s', (text, format, day) => {
  expect(iso(text, format)).toBe(day)
})

it.each([
  ['04/03/2026', 'iso'],
  ['2026-3-4', 'iso'],
  ['2026-02-29', 'iso'],
  ['29/02/2026', 'd/m/y'],
  ['03/29/2026', 'd/m/y'],
  ['04/03/26', 'd/m/y'],
  ['31/04/2026', 'd/m/y'],
  ['2026-03-04T00:00', 'iso'],
  ['', 'iso'],
] as const)('does not guess at %j as %s', (text, format) => {
  expect(iso(text, format)).toBeNull()
})
