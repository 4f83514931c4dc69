/** Stores the invented network of the demo in an empty ledger, whole or not at all, and learns its model. */
import { makeScenario, readingAt, type Scenario } from '@gaugewright/scenario'
import type { IsoDay, Reading } from '@gaugewright/science'
import type { Gauge, Ledger } from '../ports/ledger.ts'
import type { Ports } from '../ports/ports.ts'
import { type Answer, answered, refused } from './answer.ts'
import { demoNetworkId } from './demoNetworkId.ts'
import { demoPeople } from './demoPeople.ts'
import { reviewDay } from './reviewDay.ts'

export interface MakeDemoAsk {
  seed: number
  /** The last observing day of the demo. */
  today: IsoDay
  gaugeCount?: number
  years?: number
  onProgress?: (step: DemoStep, done: number, total: number) => void
}

export type DemoStep = 'weather' | 'readings' | 'learning'

export interface DemoMade {
  gauges: number
  readings: number
  today: IsoDay
}

const NETWORK_ID = demoNetworkId
/** Kept in the ledger's cache once the demo is whole. */
const WHOLE_KEY = 'demo is whole'
const BATCH = 5000

export async function makeDemo(ports: Ports, ask: MakeDemoAsk): Promise<Answer<DemoMade>> {
  if ((await ports.ledger.networks()).length > 0) {
    return refused(
      'LEDGER_NOT_EMPTY',
      'the ledger holds a network already',
      'Make the demo in a file of its own with --db.',
    )
  }
  ask.onProgress?.('weather', 0, 1)
  const { gaugeCount, years } = ask
  const scenario = makeScenario({
    seed: ask.seed,
    today: ask.today,
    ...(gaugeCount !== undefined && { gaugeCount }),
    ...(years !== undefined && { years }),
  })
  ask.onProgress?.('weather', 1, 1)
  const gauges = await store(ports, scenario, (done, total) => ask.onProgress?.('readings', done, total))
  await demoPeople(ports, NETWORK_ID, gauges, ask.seed)
  ask.onProgress?.('learning', 0, 1)
  const reviewed = await reviewDay(ports, { day: ask.today })
  if (!reviewed.ok) return reviewed
  ask.onProgress?.('learning', 1, 1)
  await ports.ledger.saveCached(NETWORK_ID, WHOLE_KEY, '1', ask.today)
  return answered({ gauges: scenario.gauges.length, readings: scenario.readings.count, today: ask.today })
}

/** What a ledger holds, seen from the demo. `begun`: its making was broken off. */
export async function demoState(ledger: Ledger): Promise<'empty' | 'whole' | 'begun' | 'other'> {
  const networks = await ledger.networks()
  if (networks.length === 0) return 'empty'
  if (networks.some((network) => network.id !== NETWORK_ID)) return 'other'
  return (await ledger.cached(NETWORK_ID, WHOLE_KEY)) === null ? 'begun' : 'whole'
}

async function store(
  ports: Ports,
  scenario: Scenario,
  onProgress: (done: number, total: number) => void,
): Promise<Gauge[]> {
  const { ledger } = ports
  const gauges: Gauge[] = scenario.gauges.map((gauge) => ({ ...gauge, id: ports.newId(), networkId: NETWORK_ID }))
  const idAt = (place: number): string => gauges[place]?.id ?? ''
  const load = await ledger.load(NETWORK_ID)
  try {
    await load.saveNetwork({ ...scenario.network, id: NETWORK_ID })
    await load.saveGauges(gauges)
    const { count } = scenario.readings
    for (let first = 0; first < count; first += BATCH) {
      const batch: Reading[] = []
      for (let index = first; index < Math.min(count, first + BATCH); index++) {
        const { gauge, ...reading } = readingAt(scenario.readings, index)
        batch.push({ ...reading, id: ports.newId(), gaugeId: idAt(gauge), door: 'demo', supersedes: null })
      }
      await load.appendReadings(batch)
      onProgress(Math.min(count, first + BATCH), count)
    }
    await load.commit()
  } catch (error) {
    await load.rollback()
    throw error
  }
  for (const { gauge, firstDay, lastDay } of scenario.absences) {
    await ledger.saveAbsence({ networkId: NETWORK_ID, gaugeId: idAt(gauge), firstDay, lastDay })
  }
  for (const { name, kind, geojson } of scenario.layers) {
    await ledger.saveLayer({ networkId: NETWORK_ID, name, kind, geojson })
  }
  return gauges
}
