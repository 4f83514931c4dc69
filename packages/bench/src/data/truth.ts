/** The mistakes that were put into a test network, and the names that we give to them. */
import type { Mistake } from '@gaugewright/science'
import { dayFromIso } from './parseWideCsv.ts'

/** Kinds of the test sets, each under our own name for it (shared meaning, see README.md of this package). */
export const mistakeOfInjectedKind: Readonly<Record<string, Mistake>> = {
  slip_x10: 'decimal',
  slip_div10: 'decimal',
  slip_x100: 'decimal',
  slip_div100: 'decimal',
  inches_in_mm_field: 'unit',
  mm_in_inch_field: 'unit',
  day_shift: 'day',
  run_as_total: 'carried',
  inner_fill_dropped: 'first-fill-lost',
  inner_fill_only: 'first-fill-only',
  false_zero: 'false-zero',
  dew_or_sprinkler: 'wetted',
  digits_transposed: 'transposed',
  previous_repeated: 'repeated',
  gross_random: 'other',
}

/** One changed cell. `reportedMm` is NaN where the reading was left out; `scored` says whether it counts as a case. */
export interface TruthRow {
  event: number
  kind: string
  role: string
  gauge: number
  day: number
  trueMm: number
  reportedMm: number
  scored: boolean
  mistake: Mistake
}

/**
 * @param text  truth.csv: event,kind,role,gauge,date,true_mm,reported_mm,scored
 * @param ids   gauges in the order of the tables
 * @throws {Error} a kind or a gauge that is not known (names it)
 */
export function parseTruth(text: string, ids: readonly string[]): TruthRow[] {
  const place = new Map(ids.map((id, index) => [id, index]))
  const rows: TruthRow[] = []
  for (const line of text.split(/\r?\n/).slice(1)) {
    if (line === '') continue
    const [event, kind, role, gaugeId, date, trueMm, reportedMm, scored] = line.split(',')
    const mistake = mistakeOfInjectedKind[kind!]
    const gauge = place.get(gaugeId!)
    if (mistake === undefined || gauge === undefined)
      throw new Error(`truth row "${line}" names an unknown kind or gauge`)
    rows.push({
      event: Number(event),
      kind: kind!,
      role: role!,
      gauge,
      day: dayFromIso(date!),
      trueMm: trueMm === '' ? Number.NaN : Number(trueMm),
      reportedMm: reportedMm === '' ? Number.NaN : Number(reportedMm),
      scored: scored === '1',
      mistake,
    })
  }
  return rows
}
