/** What a sender's program may read: no names of observers, no exact positions. */
import type {
  AcceptedPage,
  AcceptedPageAsk,
  MachineFindings,
  MachineGauges,
  MachineNetwork,
  MachineRoll,
} from '@gaugewright/contract'
import { epochDayFromIso, isoFromEpochDay } from '@gaugewright/science'
import type { NetworkSettings } from '../../ports/ledger.ts'
import type { Ports } from '../../ports/ports.ts'
import { type Answer, answered, refused } from '../answer.ts'
import { acceptedRecord } from '../morning/acceptedRecord.ts'
import { reviewDay } from '../reviewDay.ts'

const PAGE_DAYS = 31

export async function machineNetwork(ports: Pick<Ports, 'ledger'>): Promise<Answer<MachineNetwork>> {
  const found = await networkOf(ports)
  if (!found.ok) return found
  const { id, name, timeZone, readingTime, unit } = found.value
  const range = await ports.ledger.dayRange(id)
  const [firstDay, lastDay] = [range?.firstDay ?? null, range?.lastDay ?? null]
  return answered({ id, name, timeZone, readingTime, unit, firstDay, lastDay })
}

export async function machineGauges(ports: Pick<Ports, 'ledger'>): Promise<Answer<MachineGauges>> {
  const found = await networkOf(ports)
  if (!found.ok) return found
  const gauges = await ports.ledger.gauges(found.value.id)
  return answered({
    gauges: gauges.map((gauge) => ({
      gauge: gauge.code,
      name: gauge.name,
      latDeg: Math.round(gauge.latDeg * 100) / 100,
      lonDeg: Math.round(gauge.lonDeg * 100) / 100,
      elevationM: gauge.elevationM,
      area: gauge.area,
      openedOn: gauge.openedOn,
      closedOn: gauge.closedOn,
    })),
  })
}

/** @param path  of the page itself, for the link to the next */
export async function acceptedPage(
  ports: Pick<Ports, 'ledger'>,
  ask: AcceptedPageAsk,
  path: string,
): Promise<Answer<AcceptedPage>> {
  const found = await networkOf(ports)
  if (!found.ok) return found
  const { ledger } = ports
  const networkId = found.value.id
  const from = ask.from ?? (await ledger.dayRange(networkId))?.lastDay
  if (from === undefined) return refused('LEDGER_EMPTY', 'the ledger holds no readings yet', 'Send readings first.')
  const last = ask.to ?? from
  if (from > last) return refused('DAYS_OUT_OF_ORDER', `from ${from} to ${last}`, 'Give the earlier day first.')
  const pageEnd = isoFromEpochDay(Math.min(epochDayFromIso(last), epochDayFromIso(from) + PAGE_DAYS - 1))
  const codeOf = new Map((await ledger.gauges(networkId)).map((gauge) => [gauge.id, gauge.code]))
  const readings = await ledger.readings(networkId, from, pageEnd)
  const decisions = await ledger.decisions(networkId, from, pageEnd)
  const nextDay = isoFromEpochDay(epochDayFromIso(pageEnd) + 1)
  return answered({
    from,
    to: pageEnd,
    next: pageEnd < last ? `${path}?from=${nextDay}&to=${last}` : null,
    rows: [...acceptedRecord(readings, decisions)].map(({ reading, amountUm, isTrace, firstDay, lastDay }) => ({
      gauge: codeOf.get(reading.gaugeId) ?? reading.gaugeId,
      day: lastDay,
      firstDay,
      amountUm,
      isTrace,
      readingId: reading.id,
      amended:
        amountUm !== reading.amountUm ||
        isTrace !== reading.isTrace ||
        firstDay !== reading.firstDay ||
        lastDay !== reading.lastDay,
    })),
  })
}

export async function machineRoll(ports: Ports, day: string): Promise<Answer<MachineRoll>> {
  const reviewed = await reviewDay(ports, { day })
  if (!reviewed.ok) return reviewed
  return answered({
    day: reviewed.value.day,
    rows: reviewed.value.roll.map((row) => ({
      gauge: row.code,
      answer: row.answer,
      readingId: row.readingId,
      acceptedUm: row.acceptedUm,
      isTrace: row.decision?.amended?.isTrace ?? row.isTrace,
      days: row.spanDays,
    })),
  })
}

export async function machineFindings(ports: Ports, day: string): Promise<Answer<MachineFindings>> {
  const reviewed = await reviewDay(ports, { day })
  if (!reviewed.ok) return reviewed
  const docket = new Map(reviewed.value.docket.map((row) => [row.readingId, row]))
  return answered({
    day: reviewed.value.day,
    rows: reviewed.value.roll.flatMap((row) => {
      if (row.readingId === null || row.standsOdds === null) return []
      const doubt = docket.get(row.readingId)
      const isMistake = doubt !== undefined && doubt.likeliest !== 'stands'
      return {
        gauge: row.code,
        readingId: row.readingId,
        standsOdds: row.standsOdds,
        mistake: isMistake ? doubt.likeliest : null,
        mistakeOdds: isMistake ? doubt.likeliestOdds : null,
        proposedUm: doubt?.proposedUm ?? null,
        decision: row.decision?.verdict ?? null,
      }
    }),
  })
}

async function networkOf({ ledger }: Pick<Ports, 'ledger'>): Promise<Answer<NetworkSettings>> {
  const network = (await ledger.networks())[0]
  if (network !== undefined) return answered(network)
  return refused('LEDGER_EMPTY', 'the ledger holds no network yet', 'Import its gauges first.')
}
