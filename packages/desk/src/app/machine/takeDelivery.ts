/**
 * A delivery of readings: whole or not at all, or the good rows where the sender asks for them; each delivery once. The
 * same again, under the same key and with the same content, is answered as it was the first time and adds nothing.
 */
import type { BulkAnswer, MachineReading, RowAnswer } from '@gaugewright/contract'
import { epochDayFromIso, observingDays, type Reading } from '@gaugewright/science'
import type { Delivery } from '../../ports/deliveries.ts'
import type { Ledger } from '../../ports/ledger.ts'
import type { Ports } from '../../ports/ports.ts'
import { type Answer, answered, refused } from '../answer.ts'
import { placeRow, type RefusedRow, type RowTerms } from './placeRow.ts'

export interface DeliveryAsk {
  /** What makes another delivery the same, and the digest of its content. */
  key: string
  bodyHash: string
  sender: string
  name: string
  /** Each with its number from 1. */
  rows: readonly { row: number; reading: MachineReading }[]
  refusedBefore?: readonly RefusedRow[]
  notes?: readonly string[]
  keepGood: boolean
}

type TakePorts = Pick<Ports, 'ledger' | 'clock' | 'newId'>

/** Days up to which all gauges are looked up at once; beyond, each gauge by itself. */
const FEW_DAYS = 31

export async function takeDelivery(ports: TakePorts, ask: DeliveryAsk): Promise<Answer<BulkAnswer>> {
  const { ledger, clock } = ports
  const network = (await ledger.networks())[0]
  if (network === undefined)
    return refused('LEDGER_EMPTY', 'the ledger holds no network yet', 'Import its gauges first.')
  const before = await ledger.delivery(network.id, ask.key)
  if (before !== null) return answeredBefore(before, ask)
  const zone = observingDays(network.timeZone, network.readingTime)
  if (zone.kind === 'problem') return refused(zone.code, zone.seen, zone.advice)
  const gaugeByCode = new Map((await ledger.gauges(network.id)).map((gauge) => [gauge.code, gauge]))
  const terms: RowTerms = { network, days: zone.days, gaugeByCode, nowUtc: clock.nowUtc() }
  const load = await ledger.load(network.id)
  let isOpen = true
  try {
    // Nobody else writes now: what is looked up stays true until it is kept.
    const meanwhile = await ledger.delivery(network.id, ask.key)
    if (meanwhile !== null) return answeredBefore(meanwhile, ask)
    const { answer, fresh } = await weighRows(ports, terms, ask)
    if (answer.refused > 0 && !ask.keepGood) return answered(answer)
    if (fresh.length > 0) await load.appendReadings(fresh)
    const { key, bodyHash, sender, name } = ask
    const receivedAtUtc = terms.nowUtc
    await load.keepDelivery({ key, bodyHash, sender, name, receivedAtUtc, answer: JSON.stringify(answer) })
    isOpen = false
    await load.commit()
    return answered(answer)
  } finally {
    if (isOpen) await load.rollback()
  }
}

function answeredBefore({ bodyHash, answer }: Delivery, ask: DeliveryAsk): Answer<BulkAnswer> {
  if (bodyHash === ask.bodyHash) return answered(JSON.parse(answer) as BulkAnswer)
  return refused(
    'IDEMPOTENCY_KEY_REUSED',
    `the key "${ask.name}" came before with another content`,
    'Give each delivery a key of its own; send the same content to get its answer again.',
  )
}

async function weighRows(
  { ledger, newId }: TakePorts,
  terms: RowTerms,
  ask: DeliveryAsk,
): Promise<{ answer: BulkAnswer; fresh: Reading[] }> {
  const rows: RowAnswer[] = (ask.refusedBefore ?? []).map((one) => ({ ...one, status: 'refused' as const }))
  const placed: { row: number; reading: Reading }[] = []
  for (const { row, reading } of ask.rows) {
    const answer = placeRow(reading, terms)
    if (!answer.ok) rows.push({ row, status: 'refused', problem: answer.problem })
    else {
      const kept = { id: newId(), receivedAtUtc: terms.nowUtc, door: 'machine' as const, supersedes: null }
      placed.push({ row, reading: { ...answer.value, ...kept } })
    }
  }
  const held = await heldBefore(
    ledger,
    terms.network.id,
    placed.map(({ reading }) => reading),
  )
  const given = new Map<string, Reading>()
  const fresh: Reading[] = []
  for (const { row, reading } of placed) {
    const key = keyOf(reading)
    const twin = given.get(key)
    if (twin !== undefined && !isSame(twin, reading)) {
      const { problem } = refused('READING_TWICE', `${reading.lastDay}, given before with another amount`, 'Keep one.')
      rows.push({ row, status: 'refused', problem })
      continue
    }
    given.set(key, reading)
    const before = held.get(key)
    if (twin !== undefined || (before !== undefined && isSame(before, reading))) {
      rows.push({ row, status: 'already' })
      continue
    }
    fresh.push(reading)
    rows.push({ row, status: before === undefined ? 'stored' : 'correcting' })
  }
  rows.sort((one, other) => one.row - other.row)
  const count = (status: RowAnswer['status']): number => rows.filter((row) => row.status === status).length
  const counts = { stored: count('stored'), correcting: count('correcting'), already: count('already') }
  const refusedCount = count('refused')
  const taken = refusedCount === 0 || ask.keepGood
  const answer: BulkAnswer = {
    taken,
    ...(taken ? counts : { stored: 0, correcting: 0, already: counts.already }),
    refused: refusedCount,
    receivedAtUtc: terms.nowUtc,
    rows: taken
      ? rows
      : rows.map((row) =>
          row.status === 'refused' || row.status === 'already' ? row : { row: row.row, status: 'not taken' as const },
        ),
    notes: [...(ask.notes ?? [])],
  }
  return { answer, fresh }
}

/** What the ledger holds for the same gauges and intervals. */
async function heldBefore(
  ledger: Ledger,
  networkId: string,
  readings: readonly Reading[],
): Promise<Map<string, Reading>> {
  const held = new Map<string, Reading>()
  const spans = new Map<string, { from: string; to: string }>()
  for (const { gaugeId, lastDay } of readings) {
    const span = spans.get(gaugeId)
    if (span === undefined) spans.set(gaugeId, { from: lastDay, to: lastDay })
    else if (lastDay < span.from) span.from = lastDay
    else if (lastDay > span.to) span.to = lastDay
  }
  const from = [...spans.values()].reduce((least, span) => (span.from < least ? span.from : least), '9999-12-31')
  const to = [...spans.values()].reduce((most, span) => (span.to > most ? span.to : most), '0000-01-01')
  if (spans.size === 0) return held
  const found =
    epochDayFromIso(to) - epochDayFromIso(from) < FEW_DAYS
      ? await ledger.readings(networkId, from, to)
      : (
          await Promise.all(
            [...spans].map(([gaugeId, span]) => ledger.readingsOfGauge(networkId, gaugeId, span.from, span.to)),
          )
        ).flat()
  for (const reading of found) held.set(keyOf(reading), reading)
  return held
}

function keyOf({ gaugeId, firstDay, lastDay }: Reading): string {
  return `${gaugeId} ${firstDay} ${lastDay}`
}

function isSame(one: Reading, other: Reading): boolean {
  return one.amountUm === other.amountUm && one.isTrace === other.isTrace
}
