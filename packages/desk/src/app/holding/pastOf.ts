/** The accepted record of the last days as one table, with who is expected when: what everything about holding on rests on. */
import { type AnswerState, type DailyTable, epochDayFromIso, isoFromEpochDay } from '@gaugewright/science'
import type { Gauge, NetworkSettings } from '../../ports/ledger.ts'
import type { Ports } from '../../ports/ports.ts'
import { historyTable } from '../model/historyTable.ts'
import { closedDayOf } from '../people/todayOf.ts'

export interface Past {
  gauges: readonly Gauge[]
  table: DailyTable
  firstDay: number
  /** The last day that is over: of the record, so that a desk that slept blames nobody. */
  lastDay: number
  away: ReadonlyMap<string, ReadonlySet<number>>
}

export async function pastOf(
  ports: Pick<Ports, 'ledger' | 'absences' | 'clock'>,
  network: NetworkSettings,
  days: number,
  lastAsked?: number,
): Promise<Past | null> {
  const range = await ports.ledger.dayRange(network.id)
  if (range === null) return null
  const over = Math.min(epochDayFromIso(closedDayOf(network, ports)), epochDayFromIso(range.lastDay))
  const lastDay = Math.min(over, lastAsked ?? over)
  const firstDay = Math.max(epochDayFromIso(range.firstDay), lastDay - days + 1)
  if (firstDay > lastDay) return null
  const [from, to] = [isoFromEpochDay(firstDay), isoFromEpochDay(lastDay)]
  const gauges = await ports.ledger.gauges(network.id)
  const indexOf = new Map(gauges.map(({ id }, index) => [id, index]))
  const table = await historyTable(ports.ledger, network.id, indexOf, from, to)
  const away = new Map<string, Set<number>>()
  for (const absence of await ports.absences.ofDays(network.id, from, to)) {
    const own = away.get(absence.gaugeId) ?? new Set()
    for (let day = epochDayFromIso(absence.firstDay); day <= epochDayFromIso(absence.lastDay); day++) own.add(day)
    away.set(absence.gaugeId, own)
  }
  return { gauges, table, firstDay, lastDay, away }
}

/** How each day of the past was answered by one gauge, oldest first. */
export function statesOf({ gauges, table, firstDay, lastDay, away }: Past, index: number): AnswerState[] {
  const gauge = gauges[index]!
  const opened = gauge.openedOn === null ? firstDay : epochDayFromIso(gauge.openedOn)
  const closed = gauge.closedOn === null ? lastDay : epochDayFromIso(gauge.closedOn)
  const states: AnswerState[] = []
  for (let day = firstDay; day <= lastDay; day++) {
    const isAway = away.get(gauge.id)?.has(day) ?? false
    states.push(day < opened || day > closed ? 'not expected' : isAway ? 'away' : 'silent')
  }
  for (let row = 0; row <= lastDay - firstDay; row++) {
    const span = table.spanDays[row * table.gaugeCount + index] ?? 0
    for (let back = 1; back < span && row - back >= 0; back++)
      if (states[row - back] !== 'answered') states[row - back] = 'covered'
    if (span > 0) states[row] = 'answered'
  }
  return states
}

const letters: Record<AnswerState, string> = {
  answered: 'a',
  covered: 'c',
  away: 'w',
  silent: 's',
  'not expected': '-',
}

export function stripOf(states: readonly AnswerState[]): string {
  return states.map((state) => letters[state]).join('')
}
