/** Readings from a sender's program as SHEF. Every line of it is accounted for in the answer. */
import type { BulkAnswer, MachineReading, SendShefAsk } from '@gaugewright/contract'
import {
  formatInstant,
  isoFromEpochDay,
  observingDays,
  parseInstant,
  type ShefProblem,
  type ShefReading,
  shefReadings,
  usualWindow,
} from '@gaugewright/science'
import type { Ports } from '../ports/ports.ts'
import { type Answer, refused } from './answer.ts'
import { takeDelivery } from './machine/takeDelivery.ts'
import { type CallIdentity, deliveryOf } from './sendBulk.ts'

export async function sendShef(
  ports: Pick<Ports, 'ledger' | 'clock' | 'newId'>,
  ask: SendShefAsk,
  call: CallIdentity,
): Promise<Answer<BulkAnswer>> {
  const network = (await ports.ledger.networks())[0]
  if (network === undefined)
    return refused('LEDGER_EMPTY', 'the ledger holds no network yet', 'Import its gauges first.')
  const zone = observingDays(network.timeZone, network.readingTime)
  if (zone.kind === 'problem') return refused(zone.code, zone.seen, zone.advice)
  const { acceptWindowMin } = network
  const window = { ...usualWindow, beforeMin: acceptWindowMin, afterMin: acceptWindowMin }
  const nowUtcMs = parseInstant(ports.clock.nowUtc()) ?? 0
  const { readings, problems, passedOver } = shefReadings(ask.text, { nowUtcMs, days: zone.days, window })
  const atLine = (problem: ShefProblem): string => `line ${problem.line}, column ${problem.column}: "${problem.seen}"`
  const bad = problems.filter(({ severity }) => severity === 'refused')
  const warned = problems.filter(({ severity }) => severity === 'warned')
  return await takeDelivery(ports, {
    ...deliveryOf(call),
    rows: readings.map((reading) => ({ row: reading.line, reading: rowFrom(reading) })),
    refusedBefore: bad.map((problem) => ({
      row: problem.line,
      problem: refused(problem.code, atLine(problem), `Wanted: ${problem.wanted}.`).problem,
    })),
    notes: [
      ...Object.entries(passedOver).map(([what, number]) => `${number} passed over: ${what}`),
      ...warned.map((problem) => `${problem.code} ${atLine(problem)}; wanted: ${problem.wanted}`),
    ],
    keepGood: ask.keepGood,
  })
}

function rowFrom(reading: ShefReading): MachineReading {
  const { location, firstDay, lastDay, observedAtUtcMs, text, unit, remark } = reading
  return {
    gauge: location,
    day: isoFromEpochDay(lastDay),
    ...(firstDay < lastDay && { firstDay: isoFromEpochDay(firstDay) }),
    readAtUtc: formatInstant(observedAtUtcMs),
    // Without its point a number is hundredths of an inch: said with it, so that it is read alike everywhere.
    amount: /^\d+$/.test(text) && Number(text) !== 0 ? (Number(text) / 100).toFixed(2) : text,
    unit,
    ...(remark !== null && { remark }),
  }
}
