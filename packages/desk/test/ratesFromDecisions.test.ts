import type { DayEvidence } from '@gaugewright/contract'
import { epochDayFromIso, isoFromEpochDay } from '@gaugewright/science'
import { describe, expect, it } from 'vitest'
import type { Answer } from '../src/app/answer.ts'
import { decide } from '../src/app/decide.ts'
import { evidenceForReading } from '../src/app/evidenceForReading.ts'
import { reviewDay } from '../src/app/reviewDay.ts'
import type { Ports } from '../src/ports/ports.ts'
import { openMemoryLedger } from '../src/store/memory/memoryLedger.ts'
import { portsOver } from './support/openDesk.ts'
import { smallNetwork } from './support/smallNetwork.ts'

const small = smallNetwork(120)
const last = epochDayFromIso(small.lastDay)
const careless = 'gC3'
/** Older than anything the last morning is judged by. */
const oldDays = Array.from({ length: 14 }, (_, k) => isoFromEpochDay(last - 60 + 3 * k))

/** A desk that has learned from all but the last morning. */
async function deskBeforeLastMorning(): Promise<Ports> {
  const ports = portsOver(openMemoryLedger())
  await ports.ledger.saveNetwork(small.network)
  await ports.ledger.saveGauges(small.gauges)
  await ports.ledger.appendReadings(
    'small',
    small.readings.filter(({ lastDay }) => lastDay < small.lastDay),
  )
  value(await reviewDay(ports, { day: 'latest' }))
  return ports
}

async function oddsOnLastMorning(ports: Ports): Promise<{ careless: number; other: number; model: string }> {
  await ports.ledger.appendReadings(
    'small',
    small.readings.filter(({ lastDay }) => lastDay === small.lastDay),
  )
  const oddsOf = async (gaugeId: string): Promise<number> => {
    const evidence: DayEvidence = value(await evidenceForReading(ports, { readingId: `r-${gaugeId}-${small.lastDay}` }))
    return (1 - evidence.standsOdds) / evidence.standsOdds
  }
  const { modelVersion } = value(await reviewDay(ports, { day: small.lastDay }))
  return { careless: await oddsOf(careless), other: await oddsOf('gA6'), model: modelVersion }
}

function value<T>(answer: Answer<T>): T {
  if (!answer.ok) throw new Error(answer.problem.code)
  return answer.value
}

/** Decides about the gauge's readings of the old days, as a person would. */
async function decideOldDays(ports: Ports, verdict: 'amended' | 'stands', days = oldDays): Promise<number> {
  let decided = 0
  for (const day of days) {
    const [reading] = await ports.ledger.readingsOfGauge('small', careless, day, day)
    if (reading === undefined) continue
    const amended =
      verdict === 'stands' ? null : { amountUm: reading.amountUm + 2000, isTrace: false, firstDay: day, lastDay: day }
    value(await decide(ports, { readingId: reading.id, verdict, amended, reason: '', by: 'coordinator' }))
    decided++
  }
  return decided
}

describe('what persons decided moves the odds of the observer’s next reading', () => {
  it('found mistaken, the next is doubted more; found right, less; others little', {
    timeout: 120_000,
  }, async () => {
    const untouched = await oddsOnLastMorning(await deskBeforeLastMorning())
    const amending = await deskBeforeLastMorning()
    expect(await decideOldDays(amending, 'amended')).toBeGreaterThan(10)
    const afterMistakes = await oddsOnLastMorning(amending)
    const standing = await deskBeforeLastMorning()
    await decideOldDays(standing, 'stands')
    const afterRight = await oddsOnLastMorning(standing)
    expect(afterMistakes.careless / untouched.careless).toBeGreaterThan(1.5)
    expect(afterRight.careless / untouched.careless).toBeLessThan(0.7)
    for (const { other } of [afterMistakes, afterRight]) {
      expect(other / untouched.other).toBeGreaterThan(0.3)
      expect(other / untouched.other).toBeLessThan(1.5)
    }
    expect(untouched.model).not.toContain('decided')
    expect(afterMistakes.model).toContain('decided')
  })

  it('the mistake that the finding named is kept with the decision', async () => {
    const ports = await deskBeforeLastMorning()
    await oddsOnLastMorning(ports)
    const readingId = `r-${careless}-${small.lastDay}`
    const ask = { readingId, verdict: 'set aside' as const, amended: null, reason: '', by: 'coordinator' }
    value(await decide(ports, ask))
    const [first] = await ports.ledger.decisions('small', small.lastDay, small.lastDay)
    expect(first?.mistake).toBe('decimal')
    // Deciding again, it is still what the finding says of the reading as it was reported.
    value(await decide(ports, { ...ask, verdict: 'stands' }))
    expect((await ports.ledger.decisions('small', small.lastDay, small.lastDay)).at(-1)?.mistake).toBe('decimal')
  })

  it('decisions about the newest days do not move the model under the coordinator’s hands', async () => {
    const ports = await deskBeforeLastMorning()
    const before = await oddsOnLastMorning(ports)
    const newest = [1, 2, 3].map((back) => isoFromEpochDay(last - back))
    expect(await decideOldDays(ports, 'stands', newest)).toBeGreaterThan(0)
    expect(value(await reviewDay(ports, { day: small.lastDay })).modelVersion).toBe(before.model)
  })

  it('a desk opened again the same day counts nothing anew, and finds the same', async () => {
    const ports = await deskBeforeLastMorning()
    await decideOldDays(ports, 'amended', oldDays.slice(0, 4))
    const first = await oddsOnLastMorning(ports)
    let counted = 0
    const reopened: Ports = {
      ...ports,
      ledger: new Proxy(ports.ledger, {
        get(target, name) {
          if (name === 'readingAmounts') counted++
          const found = Reflect.get(target, name)
          return typeof found === 'function' ? found.bind(target) : found
        },
      }),
    }
    expect(value(await reviewDay(reopened, { day: small.lastDay })).modelVersion).toBe(first.model)
    expect(counted).toBe(0)
  })
})
