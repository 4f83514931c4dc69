/**
 * A small invented network for tests: 36 gauges on a bent lattice, some months of seeded weather that is smooth in
 * space, and on the last morning slips that are known. Amounts in whole hundredths of an inch or tenths of a millimetre.
 */
import { isoFromEpochDay, type Reading, seededRandom } from '@gaugewright/science'
import type { Gauge, NetworkSettings } from '../../src/ports/ledger.ts'

export interface SmallNetwork {
  network: NetworkSettings
  gauges: Gauge[]
  readings: Reading[]
  lastDay: string
  /** The slips of the last morning, by gauge id: what was typed and what was true, mm. */
  slips: { gaugeId: string; kind: 'decimal' | 'false-zero'; typedMm: number; trueMm: number }[]
}

const SIDE = 6
/** 2026-05-31 */
const LAST_DAY = 20_604

export function smallNetwork(dayCount = 150, change: Partial<NetworkSettings> = {}): SmallNetwork {
  const random = seededRandom(20_604)
  const network: NetworkSettings = {
    id: 'small',
    name: 'Small Hills',
    timeZone: 'UTC',
    readingTime: '07:00',
    acceptWindowMin: 120,
    unit: 'mm',
    language: 'en',
    docketBelow: 0.5,
    ...change,
  }
  const gauges = Array.from({ length: SIDE * SIDE }, (_, index) => {
    const column = index % SIDE
    const row = Math.floor(index / SIDE)
    const letters = `${String.fromCharCode(65 + row)}${column + 1}`
    return {
      id: `g${letters}`,
      networkId: network.id,
      code: letters,
      name: `Hill ${letters}`,
      latDeg: 44 + 0.06 * row + 0.02 * random(),
      lonDeg: 7 + 0.085 * column + 0.02 * random(),
      elevationM: Math.round(300 + 90 * row + 60 * random()),
      area: row < SIDE / 2 ? 'South' : 'North',
      observerName: `Observer ${letters}`,
      resolutionUm: 100,
      openedOn: null,
      closedOn: null,
    }
  })
  const readings: Reading[] = []
  const slips: SmallNetwork['slips'] = []
  for (let back = dayCount - 1; back >= 0; back--) {
    const day = isoFromEpochDay(LAST_DAY - back)
    // The last morning is wet, so that slips stand out.
    const isWet = back === 0 || random() < 0.45
    const level = isWet ? (back === 0 ? 2.9 : 1 + 1.2 * random()) : -3
    const slopeX = 0.5 * (random() - 0.5)
    const slopeY = 0.5 * (random() - 0.5)
    const phase = 6 * random()
    for (const [index, gauge] of gauges.entries()) {
      const x = (index % SIDE) / SIDE
      const y = Math.floor(index / SIDE) / SIDE
      const log = level + slopeX * x + slopeY * y + 0.3 * Math.sin(3 * x + 2 * y + phase) + 0.1 * (random() - 0.5)
      const trueMm = isWet && log > 0 ? Math.round(10 * Math.exp(log)) / 10 : 0
      if (back > 0 && random() < 0.03) continue
      if (back === 0 && gauge.code === 'F6') continue
      let typedMm = trueMm
      if (back === 0 && gauge.code === 'C3') {
        typedMm = Math.round(trueMm * 100) / 10
        slips.push({ gaugeId: gauge.id, kind: 'decimal', typedMm, trueMm })
      }
      if (back === 0 && gauge.code === 'D5') {
        typedMm = 0
        slips.push({ gaugeId: gauge.id, kind: 'false-zero', typedMm, trueMm })
      }
      readings.push(readingFrom(gauge.id, LAST_DAY - back, day, typedMm))
    }
  }
  return { network, gauges, readings, lastDay: isoFromEpochDay(LAST_DAY), slips }
}

function readingFrom(gaugeId: string, epochDay: number, day: string, amountMm: number): Reading {
  return {
    id: `r-${gaugeId}-${day}`,
    gaugeId,
    kind: 'daily',
    firstDay: day,
    lastDay: day,
    startsAtUtc: `${isoFromEpochDay(epochDay - 1)}T07:00:00Z`,
    endsAtUtc: `${day}T07:00:00Z`,
    amountUm: Math.round(amountMm * 1000),
    isTrace: false,
    text: amountMm.toFixed(1),
    unit: 'mm',
    remark: null,
    receivedAtUtc: `${day}T07:05:00Z`,
    door: 'desk',
    supersedes: null,
  }
}
