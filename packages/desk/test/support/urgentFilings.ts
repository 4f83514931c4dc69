/** Urgent reports for tests: ids that count, places on the small network's hills. */
import { type FileUrgentAsk, type FileUrgentInput, fileUrgentAskSchema } from '@gaugewright/contract'

export function filingId(number: number): string {
  return `00000000-0000-4000-8000-${String(number).padStart(12, '0')}`
}

/** Hail of so many mm at 08:20 on the day of the test desk's clock, ten minutes before it. */
export function hailFiling(number: number, diameterMm: number, change: Partial<FileUrgentInput> = {}): FileUrgentAsk {
  return fileUrgentAskSchema.parse({
    id: filingId(number),
    where: { kind: 'place', latDeg: 44.1, lonDeg: 7.2, name: 'Upper meadow' },
    seenAtUtc: '2026-05-31T08:20:00Z',
    by: `Witness ${number}`,
    seen: { kind: 'hail', largest: { diameterMm, by: 'ruler' } },
    ...change,
  })
}
