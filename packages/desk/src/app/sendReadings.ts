/**
 * Readings from an observer's phone, all or none. Each carries an id made on the phone: sent again, because the answer was
 * lost or the page was closed, it is told to be there already and nothing is added.
 */
import type { Actor, NewReading, SendReadingsAsk, SentReadings } from '@gaugewright/contract'
import { epochDayFromIso, isoFromEpochDay, type Reading } from '@gaugewright/science'
import { LedgerError } from '../ports/ledgerError.ts'
import type { Ports } from '../ports/ports.ts'
import { type Answer, answered, refused } from './answer.ts'
import { entryInterval } from './my/entryInterval.ts'
import { type OwnGauge, ownGauge } from './my/ownGauge.ts'
import { typedAmount } from './my/typedAmount.ts'

type SendPorts = Pick<Ports, 'ledger' | 'clock'>

export async function sendReadings(
  ports: SendPorts,
  ask: SendReadingsAsk & { actor: Actor },
): Promise<Answer<SentReadings>> {
  const found = await ownGauge(ports, ask.actor, ask.gauge)
  if (!found.ok) return found
  try {
    return await send(ports, found.value, ask.readings)
  } catch (error) {
    // The same report arrived by two ways at once: by now it is there.
    if (error instanceof LedgerError && error.problem.code === 'ID_TAKEN') return send(ports, found.value, ask.readings)
    throw error
  }
}

async function send(ports: SendPorts, own: OwnGauge, readings: readonly NewReading[]): Promise<Answer<SentReadings>> {
  const { ledger } = ports
  const { network, gauge, nowUtc } = own
  const fresh: Reading[] = []
  const received: SentReadings['received'] = []
  for (const sent of readings) {
    const before = await ledger.reading(network.id, sent.id)
    const isTwice = fresh.some(({ id }) => id === sent.id)
    if (before !== null && before.reading.gaugeId !== gauge.id) {
      return refused('ENTRY_ID_TAKEN', `the id ${sent.id}`, 'Open the report and send it again.')
    }
    received.push({ id: sent.id, isNew: before === null && !isTwice })
    if (before !== null || isTwice) continue
    const made = await readingFrom(ports, own, sent, fresh)
    if (!made.ok) return made
    fresh.push(made.value)
  }
  if (fresh.length > 0) await ledger.appendReadings(network.id, fresh)
  return answered({ received, receivedAtUtc: nowUtc })
}

async function readingFrom(
  { ledger }: SendPorts,
  { network, gauge, days, nowUtc }: OwnGauge,
  sent: NewReading,
  inThisDelivery: readonly Reading[],
): Promise<Answer<Reading>> {
  const { firstDay, lastDay, text, unit, remark, confirmed, corrects } = sent
  const span = epochDayFromIso(lastDay) - epochDayFromIso(firstDay) + 1
  const amount = typedAmount({ text, unit, dayCount: Math.max(1, span) }, gauge.resolutionUm)
  if (!amount.ok) return amount
  const dayBefore = isoFromEpochDay(epochDayFromIso(firstDay) - 1)
  const stored = await ledger.readingsOfGauge(network.id, gauge.id, dayBefore, lastDay)
  const around = [...stored, ...inThisDelivery]
  const emptiedAtUtc = around.find((row) => row.lastDay === dayBefore)?.endsAtUtc ?? null
  const interval = entryInterval(sent, network, days, nowUtc, emptiedAtUtc)
  if (!interval.ok) return interval
  if (corrects !== null) {
    const corrected = await ledger.reading(network.id, corrects)
    if (corrected?.reading.gaugeId !== gauge.id) {
      return refused('READING_UNKNOWN', `no reading ${corrects} of this gauge`, 'Open your record and choose it again.')
    }
  }
  const same = around.find((row) => row.firstDay === firstDay && row.lastDay === lastDay)
  const isOther =
    same !== undefined && (same.amountUm !== amount.value.amountUm || same.isTrace !== amount.value.isTrace)
  if (isOther && corrects !== same.id) {
    return refused(
      'ENTRY_DAY_HAS_READING',
      `${lastDay}, which holds "${same.text}" already`,
      'Correct that reading instead, so that both are kept in their order.',
    )
  }
  return answered({
    id: sent.id,
    gaugeId: gauge.id,
    kind: span === 1 ? 'daily' : 'multiday',
    firstDay,
    lastDay,
    ...interval.value,
    ...amount.value,
    text,
    unit,
    remark: remark === '' ? null : remark,
    receivedAtUtc: nowUtc,
    door: 'phone',
    supersedes: corrects,
    ...(confirmed !== null && { confirmed }),
  })
}
