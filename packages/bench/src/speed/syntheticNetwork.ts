/**
 * An invented network of any size for timing only: gauges scattered over a plane at a steady density, on each day some
 * rain bands and storms with noise from gauge to gauge, about 2 % wrong readings. Not for judging skill.
 */
import { type DailyTable, emptyDailyTable, type GaugeSet } from '@gaugewright/science'
import { seededRandom } from './seededRandom.ts'

export interface SyntheticNetwork {
  gauges: GaugeSet
  table: DailyTable
}

const areaPerGaugeM2 = 100e6
const reportingShare = 0.93
const wrongShare = 0.02

export function syntheticNetwork(ask: {
  gaugeCount: number
  dayCount: number
  firstDay: number
  seed: number
}): SyntheticNetwork {
  const { gaugeCount, dayCount, firstDay } = ask
  const random = seededRandom(ask.seed)
  const sideM = Math.sqrt(gaugeCount * areaPerGaugeM2)
  const gauges: GaugeSet = {
    ids: Array.from({ length: gaugeCount }, (_, index) => `G${String(index + 1).padStart(5, '0')}`),
    xM: Float64Array.from({ length: gaugeCount }, () => random() * sideM),
    yM: Float64Array.from({ length: gaugeCount }, () => random() * sideM),
    elevationM: Float64Array.from({ length: gaugeCount }, () => Math.round(200 + 900 * random() * random())),
  }
  const table = emptyDailyTable(gaugeCount, firstDay, dayCount)
  const depthMm = new Float64Array(gaugeCount)
  for (let row = 0; row < dayCount; row++) {
    depthMm.fill(0)
    rainInPlace(depthMm, gauges, sideM, random)
    for (let gauge = 0; gauge < gaugeCount; gauge++) {
      if (random() > reportingShare) continue
      const cell = row * gaugeCount + gauge
      const noise = Math.exp(0.25 * (random() + random() + random() - 1.5))
      table.amountMm[cell] = report(depthMm[gauge]! * noise, random)
      table.spanDays[cell] = 1
    }
  }
  return { gauges, table }
}

/** Rain cells of 20 to 150 km across the plane; about a third of it is wet on an average day. */
function rainInPlace(depthMm: Float64Array, gauges: GaugeSet, sideM: number, random: () => number): void {
  const cellCount = Math.ceil(((sideM / 400_000) ** 2 + 1) * (1 + 5 * random() * random()))
  for (let rain = 0; rain < cellCount; rain++) {
    const centreX = random() * sideM
    const centreY = random() * sideM
    const radiusM = 20_000 + 130_000 * random() * random()
    const peakMm = 2 - 18 * Math.log(1 - random())
    for (let gauge = 0; gauge < depthMm.length; gauge++) {
      const away = ((gauges.xM[gauge]! - centreX) ** 2 + (gauges.yM[gauge]! - centreY) ** 2) / radiusM ** 2
      if (away < 4) depthMm[gauge] = depthMm[gauge]! + peakMm * Math.max(0, Math.exp(-away) - 0.1)
    }
  }
}

/** Rounded to 0.1 mm, and now and then wrong: a slipped point, a zero, or a made-up amount. */
function report(amountMm: number, random: () => number): number {
  const rounded = Math.round(amountMm * 10) / 10
  if (random() >= wrongShare) return rounded
  const which = random()
  if (which < 0.3) return Math.round(rounded * 100) / 10
  if (which < 0.7) return 0
  return Math.round(10 * (0.5 + 12 * random())) / 10
}
