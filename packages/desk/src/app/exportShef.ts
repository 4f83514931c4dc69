/**
 * The accepted record of a day as SHEF: a table (`.B`) in which each gauge says when it was read where that is not the time
 * of most, and a message (`.A`) for each total over several days. Times are in UTC and dates whole, so that it is read alike everywhere.
 */
import type { ExportShefAsk } from '@gaugewright/contract'
import {
  encodeShefTable,
  encodeShefValues,
  epochDayFromIso,
  parseInstant,
  type ShefText,
  type ShefValue,
  shefDepth,
} from '@gaugewright/science'
import type { Ports } from '../ports/ports.ts'
import { type Answer, answered, refused } from './answer.ts'
import { type AcceptedReading, acceptedRecord } from './morning/acceptedRecord.ts'

const LONGEST_SPAN_DAYS = 99

export async function exportShef(
  ports: Pick<Ports, 'ledger'>,
  ask: ExportShefAsk & { day: string },
): Promise<Answer<{ day: string; text: string; values: number }>> {
  const network = (await ports.ledger.networks())[0]
  const range = network === undefined ? null : await ports.ledger.dayRange(network.id)
  if (network === undefined || range === null) {
    return refused('LEDGER_EMPTY', 'the ledger holds no readings yet', 'Import readings first.')
  }
  const day = ask.day === 'latest' ? range.lastDay : ask.day
  const units = (ask.unit ?? network.unit) === 'mm' ? 'metric' : 'english'
  const codeOf = new Map((await ports.ledger.gauges(network.id)).map((gauge) => [gauge.id, gauge.code]))
  const readings = await ports.ledger.readings(network.id, day, day)
  const decisions = await ports.ledger.decisions(network.id, day, day)
  const accepted = acceptedRecord(readings, decisions)
  const code = ({ reading }: AcceptedReading): string => codeOf.get(reading.gaugeId) ?? reading.gaugeId
  const daily = accepted.filter(({ firstDay, lastDay }) => firstDay === lastDay)
  const totals = accepted.filter(({ firstDay, lastDay }) => firstDay !== lastDay)
  const texts: ShefText[] = []
  if (daily.length > 0) {
    texts.push(
      encodeShefTable({
        source: ask.source,
        observedAtUtcMs: endMs(mostCommonEnd(daily)),
        codes: ['PPDRZZZ'],
        units,
        rows: daily.map((row) => ({
          location: code(row),
          observedAtUtcMs: endMs(row.reading.endsAtUtc),
          data: [shefDepth(row, units)],
        })),
      }),
    )
  }
  texts.push(encodeShefValues(totals.map((row) => totalOf(row, code(row), units))))
  const bad = texts.find((text) => text.kind === 'problem')
  if (bad?.kind === 'problem') return refused(bad.code, bad.seen, `SHEF needs ${bad.wanted}.`)
  const text = texts.map((one) => (one.kind === 'text' ? one.text : '')).join('')
  return answered({ day, text, values: accepted.length })
}

/** The time of the table: that at which most gauges were read; the others say their own. */
function mostCommonEnd(rows: readonly AcceptedReading[]): string {
  const counts = new Map<string, number>()
  for (const { reading } of rows) counts.set(reading.endsAtUtc, (counts.get(reading.endsAtUtc) ?? 0) + 1)
  const [first] = [...counts].sort(([one, count], [other, most]) => most - count || (one < other ? -1 : 1))
  return first?.[0] ?? ''
}

/** To the second: SHEF says no less. */
function endMs(endsAtUtc: string): number {
  return Math.floor((parseInstant(endsAtUtc) ?? 0) / 1000) * 1000
}

function totalOf(row: AcceptedReading, location: string, units: 'english' | 'metric'): ShefValue {
  const count = epochDayFromIso(row.lastDay) - epochDayFromIso(row.firstDay) + 1
  return {
    location,
    observedAtUtcMs: endMs(row.reading.endsAtUtc),
    createdAtUtcMs: null,
    code: 'PPVRZZZ',
    variable: { unit: 'D', count: Math.min(count, LONGEST_SPAN_DAYS + 1) },
    sinceUtcMs: null,
    datum: shefDepth(row, units),
    units,
    qualifier: 'Z',
    isRevision: false,
    comment: null,
  }
}
