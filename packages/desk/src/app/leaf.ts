/** One observer's month or year on a page. Others' rain stands in it as counts alone, and only when the period is over. */
import { type Actor, isAtLeast, type LeafAsk } from '@gaugewright/contract'
import { printLeaf } from '@gaugewright/drawings'
import { epochDayFromIso } from '@gaugewright/science'
import type { Ports } from '../ports/ports.ts'
import { type Answer, answered, refused } from './answer.ts'
import { believedPast } from './holding/believedPast.ts'
import { leafOf } from './holding/leafOf.ts'
import { type Past, pastOf } from './holding/pastOf.ts'
import { periodDays } from './holding/periodDays.ts'
import { sharpenedShares, wettestDay } from './holding/stormOccasions.ts'
import { firstNetwork } from './urgent/firstNetwork.ts'

const LEAST_SHARPENED = 0.05

export async function leaf(
  ports: Pick<Ports, 'ledger' | 'access' | 'absences' | 'clock'>,
  ask: LeafAsk & { actor: Actor },
): Promise<Answer<{ html: string; fileName: string }>> {
  const network = await firstNetwork(ports)
  if (!network.ok) return network
  const { id: networkId, name, unit, language: usual } = network.value
  const gauge = await ports.ledger.gauge(networkId, ask.gauge)
  if (gauge === null) {
    return refused('GAUGE_NOT_IN_NETWORK', `the gauge "${ask.gauge}"`, 'Give the code of a gauge of the network.')
  }
  if (!isAtLeast(ask.actor.role, 'viewer') && !ask.actor.gauges.includes(gauge.id)) {
    return refused('GAUGE_NOT_YOURS', `the page of ${gauge.code}`, 'Ask for a gauge that you read.')
  }
  const { first, last } = periodDays(ask.period)
  const range = await ports.ledger.dayRange(networkId)
  if (range === null || first > epochDayFromIso(range.lastDay) || last < epochDayFromIso(range.firstDay)) {
    return refused('PERIOD_OUTSIDE_RECORD', ask.period, 'Choose a month or year of which there are readings.')
  }
  const past = await pastOf(ports, network.value, last - first + 1, last)
  if (past === null)
    return refused('PERIOD_OUTSIDE_RECORD', ask.period, 'Choose a month or year of which there are readings.')
  const index = past.gauges.findIndex(({ id }) => id === gauge.id)
  const own = leafOf(past, index, first, last)
  const isOver = past.lastDay >= last
  const believed = await believedPast(ports, network.value, past, first, last)
  const asked = own.days.filter(({ day, amountMm }) => amountMm !== null && isDoubted(past, believed, index, day))
  const isSettled = own.answered === own.expected && isOver && asked.length === 0
  const storm = isOver ? wettestDay(believed, first, last) : null
  const share = storm === null ? undefined : sharpenedShares(believed, storm, [index]).get(index)
  const person = (await ports.access.people()).find(({ gauges }) => gauges.includes(gauge.id))
  const html = printLeaf({
    language: person?.language ?? usual,
    unit,
    network: name,
    observer: person?.name ?? gauge.observerName ?? '',
    gauge: { name: gauge.name, code: gauge.code },
    period: ask.period,
    ...own,
    asked: asked.map(({ day }) => day),
    rank: isSettled ? await rankOf(ports, networkId, gauge.id, ask.period, own.totalMm) : null,
    among: isSettled ? amongOthers(believed, index, first, last, own.totalMm) : null,
    sharpened:
      storm === null || share === undefined || share < LEAST_SHARPENED
        ? null
        : { day: new Date(storm.day * 86_400_000).toISOString().slice(0, 10), share },
  })
  return answered({ html, fileName: `rain-${gauge.code}-${ask.period}.html` })
}

function isDoubted(past: Past, believed: Past, index: number, day: string): boolean {
  const cell = (epochDayFromIso(day) - past.firstDay) * past.table.gaugeCount + index
  return past.table.spanDays[cell] !== 0 && believed.table.spanDays[cell] === 0
}

/** Complete gauges, and those of them with more rain: two counts, no neighbour's amount. */
function amongOthers(past: Past, index: number, first: number, last: number, totalMm: number) {
  let all = 0
  let wetter = 0
  for (const at of past.gauges.keys()) {
    const { expected, answered: answeredDays, totalMm: other } = leafOf(past, at, first, last)
    if (answeredDays < last - first + 1 || expected !== answeredDays) continue
    all++
    if (at !== index && other > totalMm) wetter++
  }
  return all > 3 ? { all, wetter } : null
}

/** Among the gauge's own complete months of that name, or years. */
async function rankOf(
  { ledger }: Pick<Ports, 'ledger'>,
  networkId: string,
  gaugeId: string,
  period: string,
  totalMm: number,
): Promise<{ place: number; of: number } | null> {
  const totals = new Map<string, { um: number; days: number }>()
  for (const { firstDay, lastDay, amountUm } of await ledger.readingsOfGauge(
    networkId,
    gaugeId,
    '0001-01-01',
    '9999-12-31',
  )) {
    const key = period.length === 7 ? lastDay.slice(0, 7) : lastDay.slice(0, 4)
    if (period.length === 7 && key.slice(5) !== period.slice(5)) continue
    const one = totals.get(key) ?? { um: 0, days: 0 }
    one.um += amountUm
    one.days += epochDayFromIso(lastDay) - epochDayFromIso(firstDay) + 1
    totals.set(key, one)
  }
  let wetter = 0
  let of = 1
  for (const [key, { um, days }] of totals) {
    const { first, last } = periodDays(key)
    if (key === period || days < last - first + 1) continue
    of++
    if (um / 1000 > totalMm) wetter++
  }
  return of < 2 ? null : { place: wetter + 1, of }
}
