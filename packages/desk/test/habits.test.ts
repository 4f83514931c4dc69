import { gaugeHabitsSchema, type NetworkHabitsAnswer, networkHabitsSchema } from '@gaugewright/contract'
import { epochDayFromIso, isoFromEpochDay, type Reading } from '@gaugewright/science'
import { beforeAll, describe, expect, it } from 'vitest'
import type { Answer } from '../src/app/answer.ts'
import { evidenceForReading } from '../src/app/evidenceForReading.ts'
import { gaugeHabits } from '../src/app/gaugeHabits.ts'
import { networkHabits } from '../src/app/networkHabits.ts'
import type { Ports } from '../src/ports/ports.ts'
import { buildServer } from '../src/server/buildServer.ts'
import { openMemoryLedger } from '../src/store/memory/memoryLedger.ts'
import { portsOver } from './support/openDesk.ts'
import { smallNetwork } from './support/smallNetwork.ts'

const small = smallNetwork(240)
const late = 'gC4'

/** The small network with one observer who dates each morning's reading with the next day. */
function datedLate(): Reading[] {
  const byDay = new Map(small.readings.filter(({ gaugeId }) => gaugeId === late).map((row) => [row.lastDay, row]))
  return small.readings.map((reading) => {
    if (reading.gaugeId !== late) return reading
    const before = byDay.get(isoFromEpochDay(epochDayFromIso(reading.lastDay) - 1))
    const amountUm = before?.amountUm ?? 0
    return { ...reading, amountUm, text: (amountUm / 1000).toFixed(1) }
  })
}

function value<T>(answer: Answer<T>): T {
  if (!answer.ok) throw new Error(answer.problem.code)
  return answer.value
}

let ports: Ports
let network: NetworkHabitsAnswer
beforeAll(async () => {
  ports = portsOver(openMemoryLedger())
  await ports.ledger.saveNetwork(small.network)
  await ports.ledger.saveGauges(small.gauges)
  await ports.ledger.appendReadings('small', datedLate())
  network = value(await networkHabits(ports, { wait: true }))
}, 60_000)

describe('networkHabits', () => {
  it('lists every gauge, the one with the strongest habit first, with only what is told', () => {
    expect(networkHabitsSchema.parse(network)).toEqual(network)
    expect(network.gauges).toHaveLength(36)
    expect(network.gauges[0]).toMatchObject({ gaugeId: late, code: 'C4' })
    expect(network.gauges[0]?.habits[0]).toMatchObject({ kind: 'dated', isHabit: true })
    expect(network.gauges[0]?.habits[0]?.sentence).toContain("the day before's rain")
    network.gauges.forEach(({ strength, habits }, k) => {
      expect(strength).toBeLessThanOrEqual(network.gauges[Math.max(0, k - 1)]?.strength ?? 1)
      for (const { isHabit } of habits) expect(isHabit).toBe(true)
    })
  })

  it('is found once, and kept in the ledger for the next desk', async () => {
    const reads: string[] = []
    const ledger = new Proxy(ports.ledger, {
      get(target, name) {
        if (name === 'readingAmounts') reads.push('record')
        const found = Reflect.get(target, name)
        return typeof found === 'function' ? found.bind(target) : found
      },
    })
    expect(value(await networkHabits({ ...ports, ledger }))).toEqual(network)
    expect(reads).toEqual([])
  })
})

describe('gaugeHabits', () => {
  it('tells one gauge by its code, in any case, with what its plots are drawn from', async () => {
    const habits = value(await gaugeHabits(ports, { gauge: 'c4' }))
    expect(gaugeHabitsSchema.parse(habits)).toEqual(habits)
    expect(habits.gaugeId).toBe(late)
    const best = [...habits.agreement].sort((a, b) => (b.value ?? -1) - (a.value ?? -1))[0]
    expect(best?.lagDays).toBe(-1)
    expect(habits.allowedFor.offsetDays).toBeLessThan(-0.5)
    expect(habits.lastDigits.counts).toHaveLength(10)
    expect(habits.amounts.at(-1)?.belowMm).toBeNull()
    const told = habits.habits.map(({ isHabit }) => isHabit)
    expect(told.lastIndexOf(true)).toBeLessThan(told.indexOf(false))
  })

  it('refuses a code that no gauge of the network has', async () => {
    const answer = await gaugeHabits(ports, { gauge: 'Z9' })
    expect(answer).toMatchObject({ ok: false, problem: { code: 'GAUGE_NOT_IN_NETWORK', seen: '"Z9"' } })
  })

  it('answers over HTTP as it does within', async () => {
    const app = await buildServer(ports, { screens: '/nowhere' })
    const all = await app.inject({ url: '/api/habits', headers: { host: 'localhost' } })
    expect(all.json()).toEqual(JSON.parse(JSON.stringify(network)))
    const one = await app.inject({ url: '/api/habits/C4', headers: { host: 'localhost' } })
    expect(gaugeHabitsSchema.parse(one.json())).toMatchObject({ code: 'C4' })
    expect(one.json().habits[0]).toMatchObject({ kind: 'dated', isHabit: true })
    const none = await app.inject({ url: '/api/habits/Z9', headers: { host: 'localhost' } })
    expect(none.statusCode).toBe(404)
    await app.close()
  })
})

it('beside a reading stands what its odds already allow for, and beside others nothing', async () => {
  const evidenceOf = async (gaugeId: string) =>
    value(await evidenceForReading(ports, { readingId: `r-${gaugeId}-${small.lastDay}` }))
  expect((await evidenceOf(late)).allowedFor).toBe(
    "This gauge usually reports the day before's rain. Its readings are judged by the days they stand for.",
  )
  expect((await evidenceOf('gA1')).allowedFor).toBeNull()
})

it('when the record goes on, what was found last is shown at once, and looked at anew in the background', async () => {
  const last = epochDayFromIso(small.lastDay)
  const more = Array.from({ length: 8 }, (_, k) => isoFromEpochDay(last + 1 + k)).flatMap((day) =>
    small.readings
      .filter(({ lastDay }) => lastDay === small.lastDay)
      .map((reading) => ({
        ...reading,
        id: `${reading.gaugeId}-${day}`,
        firstDay: day,
        lastDay: day,
        endsAtUtc: `${day}T07:00:00Z`,
      })),
  )
  await ports.ledger.appendReadings('small', more)
  expect(value(await networkHabits(ports)).lastDay).toBe(small.lastDay)
  const newest = value(await networkHabits(ports, { wait: true }))
  expect(newest.lastDay).toBe(isoFromEpochDay(last + 8))
  expect(value(await networkHabits(ports)).lastDay).toBe(newest.lastDay)
}, 60_000)
