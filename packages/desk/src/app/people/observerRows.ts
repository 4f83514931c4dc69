/** Who reads which gauge, how to reach them, and how they have answered in the last four weeks. */
import type { ObserverRow } from '@gaugewright/contract'
import { epochDayFromIso, isoFromEpochDay } from '@gaugewright/science'
import type { NetworkSettings } from '../../ports/ledger.ts'
import type { Ports } from '../../ports/ports.ts'
import { phonesOf } from '../access/phones.ts'
import { closedDayOf, runningDayOf } from './todayOf.ts'

const LOOK_BACK_DAYS = 28

export async function observerRows(
  ports: Pick<Ports, 'ledger' | 'access' | 'absences' | 'outgoingSettings' | 'clock'>,
  network: NetworkSettings,
): Promise<ObserverRow[]> {
  const running = epochDayFromIso(runningDayOf(network, ports))
  const range = await ports.ledger.dayRange(network.id)
  // Of the record: a desk that slept blames nobody.
  const closed = epochDayFromIso(closedDayOf(network, ports))
  const last = range === null ? closed : Math.min(closed, epochDayFromIso(range.lastDay))
  const first = last - LOOK_BACK_DAYS + 1
  const [people, phones] = await Promise.all([ports.access.people(), phonesOf(ports)])
  const personOf = new Map(people.flatMap((person) => person.gauges.map((gauge) => [gauge, person] as const)))
  const answered = new Map<string, Set<number>>()
  const latest = new Map<string, string>()
  const readings = await ports.ledger.readings(network.id, isoFromEpochDay(first), isoFromEpochDay(running))
  for (const { gaugeId, firstDay, lastDay } of readings) {
    const days = answered.get(gaugeId) ?? new Set()
    for (let day = epochDayFromIso(firstDay); day <= epochDayFromIso(lastDay); day++) days.add(day)
    answered.set(gaugeId, days)
    if (lastDay > (latest.get(gaugeId) ?? '')) latest.set(gaugeId, lastDay)
  }
  const away = new Map<string, Set<number>>()
  for (const absence of await ports.absences.ofDays(network.id, isoFromEpochDay(first), isoFromEpochDay(last))) {
    const days = away.get(absence.gaugeId) ?? new Set()
    for (let day = epochDayFromIso(absence.firstDay); day <= epochDayFromIso(absence.lastDay); day++) days.add(day)
    away.set(absence.gaugeId, days)
  }
  const rows: ObserverRow[] = []
  for (const gauge of await ports.ledger.gauges(network.id)) {
    const person = personOf.get(gauge.id)
    if (gauge.closedOn !== null || (person === undefined && gauge.observerName === null)) continue
    const opened = gauge.openedOn === null ? first : Math.max(first, epochDayFromIso(gauge.openedOn))
    let expected = 0
    let came = 0
    for (let day = opened; day <= last; day++) {
      const isIn = answered.get(gauge.id)?.has(day) ?? false
      if (!isIn && away.get(gauge.id)?.has(day)) continue
      expected++
      if (isIn) came++
    }
    rows.push({
      gaugeId: gauge.id,
      code: gauge.code,
      gaugeName: gauge.name,
      personId: person?.id ?? null,
      name: person?.name ?? gauge.observerName ?? '',
      mail: person?.mail ?? null,
      phone: person === undefined ? null : (phones.get(person.id) ?? null),
      language: person?.language ?? network.language,
      lastReadingOn: latest.get(gauge.id) ?? (await lastReading(ports, network.id, gauge.id)),
      answeredShare: expected === 0 ? null : came / expected,
    })
  }
  return rows.sort((a, b) => a.name.localeCompare(b.name))
}

async function lastReading(ports: Pick<Ports, 'ledger'>, networkId: string, gaugeId: string): Promise<string | null> {
  return (await ports.ledger.readingsOfGauge(networkId, gaugeId, '0001-01-01', '9999-12-31')).at(-1)?.lastDay ?? null
}
