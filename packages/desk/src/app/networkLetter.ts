/**
 * The network's month or year on a page, for all observers. Names only where the coordinator says so; readings that still
 * wait for a decision are counted and thanked for, and are in no total.
 */
import type { NetworkLetterAsk } from '@gaugewright/contract'
import { type DayOfRain, printNetworkLetter } from '@gaugewright/drawings'
import { epochDayFromIso, isoFromEpochDay, quantile } from '@gaugewright/science'
import type { Ports } from '../ports/ports.ts'
import { type Answer, answered, refused } from './answer.ts'
import { dayAmounts } from './field/dayAmounts.ts'
import { believedPast } from './holding/believedPast.ts'
import { filledTotal, type OwnRecord } from './holding/filledTotal.ts'
import { leafOf } from './holding/leafOf.ts'
import { type Past, pastOf, statesOf } from './holding/pastOf.ts'
import { periodDays } from './holding/periodDays.ts'
import { wettestDay } from './holding/stormOccasions.ts'
import { firstNetwork } from './urgent/firstNetwork.ts'

export async function networkLetter(
  ports: Pick<Ports, 'ledger' | 'absences' | 'clock'>,
  ask: NetworkLetterAsk,
): Promise<Answer<{ html: string; fileName: string }>> {
  const network = await firstNetwork(ports)
  if (!network.ok) return network
  const { name, unit, language } = network.value
  const { first, last } = periodDays(ask.period)
  const past = await pastOf(ports, network.value, last - first + 1, last)
  if (past === null || past.lastDay < first) {
    return refused('PERIOD_OUTSIDE_RECORD', ask.period, 'Choose a month or year of which there are readings.')
  }
  const believed = await believedPast(ports, network.value, past, first, last)
  // Part of a period has no total of the period.
  const isWhole = past.firstDay <= first && past.lastDay >= last
  const days = meanByDay(believed, first, last)
  const meanMm = days.map(({ amountMm }) => amountMm ?? Number.NaN)
  const lats = past.gauges.map(({ latDeg }) => latDeg)
  const lons = past.gauges.map(({ lonDeg }) => lonDeg)
  const share = (value: number, all: number[]) =>
    (value - Math.min(...all)) / Math.max(1e-9, Math.max(...all) - Math.min(...all))
  const totals: { name: string; totalMm: number; x: number; y: number }[] = []
  let expected = 0
  let answeredDays = 0
  let readings = 0
  let observers = 0
  for (const [index, gauge] of past.gauges.entries()) {
    const own = leafOf(past, index, first, last)
    expected += own.expected
    answeredDays += own.answered
    const sent = own.days.filter(({ amountMm }) => amountMm !== null).length
    readings += sent
    if (sent > 0) observers++
    const totalMm = !isWhole ? null : filledTotal(ownRecord(believed, index, first, last), meanMm)
    if (totalMm === null) continue
    // A dot on paper is public: two decimals of a degree, about half a kilometre.
    const coarse = (degrees: number) => Math.round(degrees * 100) / 100
    totals.push({
      name: gauge.name,
      totalMm,
      x: share(coarse(gauge.lonDeg), lons),
      y: share(coarse(gauge.latDeg), lats),
    })
  }
  const amounts = totals.map(({ totalMm }) => totalMm)
  const storm = wettestDay(believed, first, last)
  const most = storm === null ? -1 : placeOfMost(storm.amounts.amountMm)
  const fresh = past.gauges.filter(
    ({ openedOn }) => openedOn !== null && epochDayFromIso(openedOn) >= first && epochDayFromIso(openedOn) <= last,
  )
  const mayName = ask.names === 'yes'
  const anniversaries = past.gauges.flatMap(({ openedOn, observerName, closedOn }) => {
    if (openedOn === null || closedOn !== null || observerName === null || !mayName) return []
    const years = Number(ask.period.slice(0, 4)) - Number(openedOn.slice(0, 4))
    const isNow = ask.period.length === 4 || openedOn.slice(5, 7) === ask.period.slice(5)
    return years > 0 && isNow && years % 5 === 0 ? [`${observerName} (${years})`] : []
  })
  const html = printNetworkLetter({
    language,
    unit,
    network: name,
    period: ask.period,
    words: ask.words,
    readings,
    observers,
    answeredShare: expected === 0 ? 0 : answeredDays / expected,
    totals,
    quartersMm: amounts.length === 0 ? null : [quantile(amounts, 0.25), quantile(amounts, 0.75)],
    days,
    storm:
      storm === null
        ? null
        : {
            day: isoFromEpochDay(storm.day),
            meanMm: storm.meanMm,
            count: storm.amounts.amountMm.filter((mm) => !Number.isNaN(mm)).length,
            mostMm: storm.amounts.amountMm[most] ?? 0,
            at: past.gauges[most]?.name ?? '',
          },
    fresh: {
      count: fresh.length,
      names: mayName ? fresh.map(({ observerName }) => observerName ?? '').filter((one) => one !== '') : [],
    },
    anniversaries,
  })
  return answered({ html, fileName: `network-${ask.period}.html` })
}

/** NaN is nobody's. */
function placeOfMost(amountMm: Float64Array): number {
  let best = -1
  for (const [at, mm] of amountMm.entries()) if (!Number.isNaN(mm) && (best < 0 || mm > amountMm[best]!)) best = at
  return best
}

function ownRecord(believed: Past, index: number, first: number, last: number): OwnRecord {
  const states = statesOf(believed, index).slice(Math.max(0, first - believed.firstDay), last - believed.firstDay + 1)
  const isCovered = states.map((state) => state === 'answered' || state === 'covered')
  return { totalMm: leafOf(believed, index, first, last).totalMm, isCovered }
}

/** Mean of the gauges that were read for the day alone; null where none was. */
function meanByDay(past: Past, first: number, last: number): DayOfRain[] {
  const days: DayOfRain[] = []
  for (let day = Math.max(first, past.firstDay); day <= Math.min(last, past.lastDay); day++) {
    const read = dayAmounts(past.table, day, past.gauges).amountMm.filter((mm) => !Number.isNaN(mm))
    const amountMm = read.length === 0 ? null : read.reduce((sum, mm) => sum + mm, 0) / read.length
    days.push({ day: isoFromEpochDay(day), amountMm, isTrace: false, spanDays: 1 })
  }
  return days
}
