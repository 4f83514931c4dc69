/** One row of a machine's delivery as a reading: its gauge, its days and its amount, each checked by itself. */
import type { MachineReading, Problem } from '@gaugewright/contract'
import {
  formatInstant,
  isoFromEpochDay,
  type ObservingDays,
  parseAmount,
  parseInstant,
  parseIsoDay,
  placeReading,
  type Reading,
  usualWindow,
} from '@gaugewright/science'
import type { Gauge, NetworkSettings } from '../../ports/ledger.ts'
import { type Answer, answered, refused } from '../answer.ts'

/** Days that one total may cover. */
const LONGEST_TOTAL_DAYS = 255
/** Clocks of computers differ. */
const CLOCKS_MAY_DIFFER_MS = 15 * 60_000
/** 1700-01-01: an earlier year is mistyped. */
const EARLIEST_DAY = -98_615
/** Only nonsense is refused here: slips are for the review to find. */
const MOST_DAYS_OF_RAIN = 50

export interface RowTerms {
  network: NetworkSettings
  days: ObservingDays
  gaugeByCode: ReadonlyMap<string, Gauge>
  nowUtc: string
}

export type PlacedRow = Omit<Reading, 'id' | 'receivedAtUtc' | 'door' | 'supersedes'>

export function placeRow(row: MachineReading, terms: RowTerms): Answer<PlacedRow> {
  const gauge = terms.gaugeByCode.get(row.gauge)
  if (gauge === undefined) {
    return refused('GAUGE_UNKNOWN', `the gauge "${row.gauge}"`, 'Send the code of a gauge of this network.')
  }
  const interval = intervalOf(row, terms)
  if (!interval.ok) return interval
  const { firstDay, lastDay } = interval.value
  const read = parseAmount(row.amount, {
    unit: row.unit,
    decimalMark: '.',
    finer: 'keep',
    capacityUm: null,
    dayCount: MOST_DAYS_OF_RAIN,
  })
  if (read.kind === 'missing') {
    return refused('AMOUNT_UNREADABLE', `the amount "${row.amount}"`, 'Leave out what was not read; send 0 for dry.')
  }
  if (read.kind !== 'amount') return refused(read.code, read.seen, read.advice)
  return answered({
    gaugeId: gauge.id,
    kind: firstDay === lastDay ? 'daily' : 'multiday',
    ...interval.value,
    amountUm: read.amountUm,
    isTrace: read.isTrace,
    text: row.amount,
    unit: read.unit,
    remark: row.remark === undefined || row.remark === '' ? null : row.remark,
  })
}

type Interval = Pick<Reading, 'firstDay' | 'lastDay' | 'startsAtUtc' | 'endsAtUtc'>

function intervalOf(row: MachineReading, { network, days, nowUtc }: RowTerms): Answer<Interval> {
  const nowMs = parseInstant(nowUtc) ?? 0
  const readMs = row.readAtUtc === undefined ? null : parseInstant(row.readAtUtc)
  const named = row.day === undefined ? null : parseIsoDay(row.day)
  const { acceptWindowMin } = network
  const window = { ...usualWindow, beforeMin: acceptWindowMin, afterMin: acceptWindowMin }
  const placed = readMs === null ? null : placeReading(days, readMs, null, window)
  const last = named ?? placed?.day ?? null
  if (last === null) return refused('DAY_NOT_VALID', 'neither day nor readAtUtc', 'Send the observing day.')
  if (placed !== null && named !== null && placed.day !== named) {
    const seen = `${row.day}, but read at ${row.readAtUtc} it is the amount of ${isoFromEpochDay(placed.day)}`
    return refused('ENTRY_DAY_DIFFERS', seen, 'Send the day in which it was read, or the right time.')
  }
  const endMs = readMs ?? days.endUtcMs(last)
  if (last < EARLIEST_DAY || endMs > nowMs + CLOCKS_MAY_DIFFER_MS) {
    return refused('DAY_NOT_VALID', row.readAtUtc ?? row.day ?? '', 'Send a day since 1700 that has already come.')
  }
  const first = row.firstDay === undefined ? last : parseIsoDay(row.firstDay)
  if (first === null || first > last || last - first >= LONGEST_TOTAL_DAYS) {
    return refused(
      'SPAN_NOT_VALID',
      `${row.firstDay} to ${isoFromEpochDay(last)}`,
      'Send the days in order, at most 255.',
    )
  }
  return answered({
    firstDay: isoFromEpochDay(first),
    lastDay: isoFromEpochDay(last),
    startsAtUtc: formatInstant(Math.min(days.endUtcMs(first - 1), endMs - 60_000)),
    endsAtUtc: formatInstant(endMs),
  })
}

/** A row that was refused before it was looked at here, such as a line that is no SHEF. */
export interface RefusedRow {
  row: number
  problem: Problem
}
