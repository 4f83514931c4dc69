/** Readings from a file into a load, a block at a time: nothing is held but the block. */
import { type EpochDay, formatInstant, isoFromEpochDay, type ObservingDays, type Reading } from '@gaugewright/science'
import type { ReadingRow, ReadingStream } from '../ports/intakeFiles.ts'
import type { AppendResult, LedgerLoad } from '../ports/ledger.ts'

export interface ImportReadingsAsk {
  stream: ReadingStream
  days: ObservingDays
  /** Ids of the gauges, by the index that the stream answers with. */
  gaugeIds: readonly string[]
  receivedAtUtc: string
  newId: () => string
  /** Called before the readings of a block are stored: gauges met for the first time are saved here. */
  beforeBlock: () => Promise<void>
}

/** @throws {IntakeRefusal} as the stream */
export async function importReadings(
  load: Pick<LedgerLoad, 'appendReadings'>,
  ask: ImportReadingsAsk,
): Promise<AppendResult> {
  const result: AppendResult = { stored: 0, already: 0, superseding: 0 }
  const instants = new DayInstants(ask.days)
  for await (const rows of ask.stream.rows) {
    await ask.beforeBlock()
    const appended = await load.appendReadings(rows.map((row) => readingFrom(row, ask, instants)))
    result.stored += appended.stored
    result.already += appended.already
    result.superseding += appended.superseding
  }
  return result
}

function readingFrom(row: ReadingRow, ask: ImportReadingsAsk, instants: DayInstants): Reading {
  const { firstDay, lastDay } = row
  const last = instants.of(lastDay)
  const startsAtUtc = instants.of(firstDay - 1).endsAtUtc
  const endsAtUtc = row.endsAtUtcMs === undefined ? last.endsAtUtc : formatInstant(row.endsAtUtcMs)
  return {
    id: ask.newId(),
    gaugeId: ask.gaugeIds[row.gauge] ?? '',
    kind: firstDay === lastDay ? 'daily' : 'multiday',
    firstDay: firstDay === lastDay ? last.day : instants.of(firstDay).day,
    lastDay: last.day,
    amountUm: row.amountUm,
    isTrace: row.isTrace,
    // Read before the days that it covers have begun: at least a minute long.
    startsAtUtc: startsAtUtc < endsAtUtc ? startsAtUtc : formatInstant((row.endsAtUtcMs ?? 0) - 60_000),
    endsAtUtc,
    text: row.text,
    unit: row.unit,
    remark: row.remark,
    receivedAtUtc: ask.receivedAtUtc,
    door: 'import',
    supersedes: null,
  }
}

/** Each day as text and the instant at which it ends, worked out once. */
class DayInstants {
  readonly #days: ObservingDays
  readonly #known = new Map<EpochDay, { day: string; endsAtUtc: string }>()

  constructor(days: ObservingDays) {
    this.#days = days
  }

  of(day: EpochDay): { day: string; endsAtUtc: string } {
    const known = this.#known.get(day)
    if (known !== undefined) return known
    const made = { day: isoFromEpochDay(day), endsAtUtc: formatInstant(this.#days.endUtcMs(day)) }
    this.#known.set(day, made)
    return made
  }
}
