import { epochDayFromIso, isoFromEpochDay, mistakes } from '@gaugewright/science'
import { describe, expect, it } from 'vitest'
import { makeScenario } from './makeScenario.ts'
import { readingAt } from './readingAt.ts'
import type { Scenario } from './scenario.ts'

const today = '2026-06-17'
const scenario = makeScenario({ seed: 4, today })
const { readings, truth, gauges } = scenario
const lastDay = epochDayFromIso(today)
const kindOf = (reading: number) => truth.kinds[truth.kind[reading]!]!
const indices = Array.from({ length: readings.count }, (_, index) => index)

describe('makeScenario', () => {
  it('the same seed and day give the same network, reading for reading', () => {
    const ask = { seed: 9, today: '2024-02-29', gaugeCount: 40, years: 1 }
    const once = makeScenario(ask)
    const twice = makeScenario(ask)
    expect(fingerprint(twice)).toEqual(fingerprint(once))
    expect(fingerprint(makeScenario({ ...ask, seed: 10 })).readings).not.toEqual(fingerprint(once).readings)
  })

  it('six years of readings of about 180 gauges end this morning', () => {
    expect(gauges).toHaveLength(180)
    expect(new Set(gauges.map((gauge) => gauge.code)).size).toBe(180)
    expect(new Set(gauges.map((gauge) => gauge.name)).size).toBe(180)
    expect(readings.count).toBeGreaterThan(240_000)
    expect(readings.lastDay[0]).toBe(epochDayFromIso('2020-06-17'))
    expect(readings.lastDay[readings.count - 1]).toBe(lastDay)
  })

  it('every county has gauges, some gauges opened during the years and some have closed', () => {
    const counts = new Map<string, number>()
    for (const gauge of gauges) counts.set(gauge.area, (counts.get(gauge.area) ?? 0) + 1)
    expect(counts.size).toBe(12)
    for (const [county, count] of counts) expect(count, county).toBeGreaterThanOrEqual(4)
    expect(gauges.filter((gauge) => gauge.openedOn > '2020-06-17').length).toBeGreaterThan(20)
    expect(gauges.filter((gauge) => gauge.closedOn !== null).length).toBeGreaterThan(2)
  })

  it('readings are ordered, each gauge has at most one ending on a day, and none was received after the desk opens', () => {
    const seen = new Uint8Array((lastDay - readings.lastDay[0]! + 1) * gauges.length)
    const preparedAtMs = Date.parse(scenario.preparedAtUtc)
    for (const index of indices) {
      if (index > 0 && readings.lastDay[index]! < readings.lastDay[index - 1]!)
        throw new Error(`reading ${index} is early`)
      const cell = (readings.lastDay[index]! - readings.lastDay[0]!) * gauges.length + readings.gauge[index]!
      if (seen[cell] === 1) throw new Error(`two readings of gauge ${readings.gauge[index]} on one day`)
      seen[cell] = 1
      const isOrdered =
        readings.startsAtMs[index]! < readings.endsAtMs[index]! &&
        readings.endsAtMs[index]! <= readings.receivedAtMs[index]! &&
        readings.receivedAtMs[index]! <= preparedAtMs
      if (!isOrdered) throw new Error(`reading ${index} has its instants out of order`)
    }
    expect(seen.reduce((sum, value) => sum + value, 0)).toBe(readings.count)
  })

  it('no reading reaches over another of the same gauge', () => {
    const lastOf = new Int32Array(gauges.length)
    const endOf = new Float64Array(gauges.length)
    let overlaps = 0
    for (const index of indices) {
      const gauge = readings.gauge[index]!
      if (readings.firstDay[index]! <= lastOf[gauge]! || readings.startsAtMs[index]! < endOf[gauge]!) overlaps++
      lastOf[gauge] = readings.lastDay[index]!
      endOf[gauge] = readings.endsAtMs[index]!
    }
    expect(overlaps).toBe(0)
  })

  it('the text, its unit and the amount say the same', () => {
    for (const index of indices) {
      const text = readings.text[index]!
      const isTrace = text === 'T' || text === 'tr'
      const scaleUm = readings.inMm[index] === 1 ? 1000 : 25_400
      const amountUm = isTrace ? 0 : Math.round(Number(text) * scaleUm)
      const agrees = amountUm === readings.amountUm[index] && isTrace === (readings.isTrace[index] === 1)
      if (!agrees) throw new Error(`reading ${index}: "${text}" is stored as ${readings.amountUm[index]} µm`)
    }
    expect(readings.text.filter((text) => text === 'T').length).toBeGreaterThan(500)
    expect(readings.inMm.filter((inMm) => inMm === 1).length).toBeGreaterThan(2000)
  })

  it('readingAt puts one reading together', () => {
    const multiday = indices.find((index) => readings.firstDay[index]! < readings.lastDay[index]!)!
    const reading = readingAt(readings, multiday)
    expect(reading.kind).toBe('multiday')
    expect(reading.lastDay).toBe(isoFromEpochDay(readings.lastDay[multiday]!))
    expect(Date.parse(reading.endsAtUtc)).toBe(readings.endsAtMs[multiday])
    expect(reading.endsAtUtc).toBe(new Date(readings.endsAtMs[multiday]!).toISOString())
  })

  it('nothing of the truth stands in the readings', () => {
    expect(Object.keys(readings).sort()).toEqual(
      [...['amountUm', 'count', 'endsAtMs', 'firstDay', 'gauge', 'inMm', 'isTrace', 'lastDay'], ...['receivedAtMs']]
        .concat(['remarks', 'startsAtMs', 'text'])
        .sort(),
    )
  })
})

describe('mistakes', () => {
  it('1.5 to 2.5 % of all readings are wrong, and every kind occurs at least ten times', () => {
    const counts = new Map<string, number>()
    for (const index of indices) counts.set(kindOf(index), (counts.get(kindOf(index)) ?? 0) + 1)
    const share = 1 - counts.get('stands')! / readings.count
    expect(share).toBeGreaterThan(0.015)
    expect(share).toBeLessThan(0.025)
    for (const kind of mistakes) expect(counts.get(kind) ?? 0, kind).toBeGreaterThanOrEqual(10)
  })

  it('a reading that stands is what the gauge held, but for rounding, light rain let pass and habits', () => {
    let far = 0
    for (const index of indices) {
      if (kindOf(index) !== 'stands') continue
      const caughtUm = truth.caughtUm[index]!
      if (Math.abs(readings.amountUm[index]! - caughtUm) > 1600 + 0.04 * caughtUm) far++
    }
    expect(far / readings.count).toBeLessThan(0.002)
  })

  it('a carried total stems from days before its own, a slipped day from another day', () => {
    for (const index of indices) {
      const isOwn =
        truth.ownFirstDay[index] === readings.firstDay[index] && truth.ownLastDay[index] === readings.lastDay[index]
      if (kindOf(index) === 'carried') expect(truth.ownFirstDay[index]).toBeLessThan(readings.firstDay[index]!)
      else if (kindOf(index) === 'day') expect(isOwn).toBe(false)
    }
  })

  it('a first fill lost is 1.00 in short', () => {
    const lost = indices.filter((index) => kindOf(index) === 'first-fill-lost')
    for (const index of lost) {
      const shortUm = truth.caughtUm[index]! - readings.amountUm[index]!
      expect(Math.abs(shortUm - 25_400)).toBeLessThan(2500)
    }
  })
})

describe('this morning', () => {
  it('has a decision of every kind to make, and a storm that is right', () => {
    const kinds = new Set(truth.morning.map((entry) => entry.kind))
    for (const kind of mistakes) expect(kinds, kind).toContain(kind)
    expect(truth.morning.length).toBeGreaterThanOrEqual(12)
    for (const entry of truth.morning) {
      expect(readings.lastDay[entry.reading]).toBe(lastDay)
      expect(readings.gauge[entry.reading]).toBe(entry.gauge)
      expect(kindOf(entry.reading)).toBe(entry.kind)
    }
  })

  it('the storm’s gauge says 2.90 in and stands, a later reading beside it holds part, and other neighbours little', () => {
    const storm = truth.morning.find((entry) => entry.name === 'storm-right')!
    const support = truth.morning.find((entry) => entry.name === 'late-support')!
    expect(readings.amountUm[storm.reading]).toBe(290 * 254)
    expect(Math.abs(truth.caughtUm[storm.reading]! - 290 * 254)).toBeLessThan(1500)
    expect(readings.endsAtMs[support.reading]).toBeGreaterThan(readings.endsAtMs[storm.reading]!)
    expect(readings.amountUm[support.reading]).toBeGreaterThan(8000)
    const near = neighboursOf(storm.gauge).filter((gauge) => gauge !== support.gauge)
    const heldUm = near.slice(0, 5).map((gauge) => {
      const reading = indices.findLast(
        (index) => readings.gauge[index] === gauge && readings.lastDay[index] === lastDay,
      )
      return reading === undefined ? 0 : truth.caughtUm[reading]!
    })
    expect(heldUm.filter((um) => um < 10_000).length).toBeGreaterThanOrEqual(4)
  })

  it('some gauges are away, silent, late, or owe a total, and most have answered', () => {
    const answered = new Set(
      indices.filter((index) => readings.lastDay[index] === lastDay).map((index) => readings.gauge[index]!),
    )
    const open = gauges.flatMap((gauge, index) => (gauge.openedOn <= today && gauge.closedOn === null ? [index] : []))
    const away = scenario.absences.filter((absence) => absence.firstDay <= today && absence.lastDay >= today)
    const owing = scenario.absences.filter(
      (absence) => absence.lastDay === isoFromEpochDay(lastDay - 1) && !answered.has(absence.gauge),
    )
    const silent = open.length - answered.size - away.length - owing.length
    expect(away.length).toBeGreaterThanOrEqual(3)
    expect(owing.length).toBeGreaterThanOrEqual(3)
    expect(silent).toBeGreaterThanOrEqual(3)
    expect(answered.size / open.length).toBeGreaterThan(0.85)
    const nineOClockMs = lastDay * 86_400_000 + 11 * 3_600_000
    const late = indices.filter(
      (index) => readings.endsAtMs[index]! > nineOClockMs && readings.lastDay[index] === lastDay,
    )
    expect(late.length).toBeGreaterThanOrEqual(5)
  })
})

/** Everything that is made, as short texts that compare quickly. */
function fingerprint(made: Scenario) {
  const columns = Object.entries(made.readings).map(([name, column]) => `${name} ${String(column)}`)
  return {
    readings: columns.join('\n'),
    remarks: [...made.readings.remarks],
    truth: [made.truth.kind, made.truth.caughtUm, made.truth.ownFirstDay, made.truth.ownLastDay].join('\n'),
    rest: JSON.stringify([made.network, made.gauges, made.layers, made.absences, made.truth.morning]),
  }
}

function neighboursOf(gauge: number): number[] {
  const from = gauges[gauge]!
  const distance = (other: number) =>
    Math.hypot(gauges[other]!.latDeg - from.latDeg, 0.72 * (gauges[other]!.lonDeg - from.lonDeg))
  return gauges
    .flatMap((other, index) => (index === gauge || other.closedOn !== null || other.openedOn > today ? [] : [index]))
    .sort((a, b) => distance(a) - distance(b))
}
