/** The ledger in memory, for tests and trials. Keeps every promise of storePromises.ts but that of outliving the process. */
import { type Decision, formatInstant, type IsoDay, type Reading } from '@gaugewright/science'
import type { Delivery } from '../../ports/deliveries.ts'
import type {
  Absence,
  AppendResult,
  DayRange,
  Gauge,
  Ledger,
  LedgerLoad,
  MapLayer,
  NetworkSettings,
  ReadingAmount,
  RuleSetting,
  SaveResult,
} from '../../ports/ledger.ts'
import { LedgerError } from '../../ports/ledgerError.ts'
import { checkRuleSetting } from '../checkRuleSetting.ts'
import { instantMs } from '../instantMs.ts'
import { deliveryTaken, unknownGauge, unknownNetwork, unknownReading } from '../unknown.ts'
import { memoryAbsences } from './memoryAbsences.ts'
import { type MemoryNetwork, memoryNetwork } from './memoryNetwork.ts'

export class MemoryLedger implements Ledger {
  readonly #networks = new Map<string, MemoryNetwork>()
  #turn: Promise<void> = Promise.resolve()

  async load(networkId: string): Promise<LedgerLoad> {
    const before = this.#turn
    let endTurn = (): void => {}
    this.#turn = new Promise((resolve) => {
      endTurn = resolve
    })
    await before
    // Work on copies; commit puts them in place of the originals in one step.
    const staged = new Map<string, MemoryNetwork>()
    const stage = (id: string): MemoryNetwork => {
      const known = staged.get(id)
      if (known !== undefined) return known
      const copy = this.#network(id).copy()
      staged.set(id, copy)
      return copy
    }
    return {
      saveNetwork: async (network) => {
        const known = staged.get(network.id) ?? this.#networks.get(network.id)?.copy()
        const changed = known ?? memoryNetwork(network)
        changed.settings = structuredClone(network)
        staged.set(network.id, changed)
      },
      saveGauges: async (gauges) => saveGauges(gauges, stage),
      appendReadings: async (readings) => {
        const { gauges, readings: stored } = stage(networkId)
        for (const { gaugeId } of readings) if (!gauges.has(gaugeId)) throw unknownGauge(gaugeId, networkId)
        return stored.append(readings)
      },
      keepDelivery: async (delivery) => {
        const { deliveries } = stage(networkId)
        if (deliveries.has(delivery.key)) throw deliveryTaken()
        deliveries.set(delivery.key, { ...delivery, receivedAtUtc: formatInstant(instantMs(delivery.receivedAtUtc)) })
      },
      commit: async () => {
        for (const [id, network] of staged) this.#networks.set(id, network)
        staged.clear()
        endTurn()
      },
      rollback: async () => {
        staged.clear()
        endTurn()
      },
    }
  }

  async networks(): Promise<NetworkSettings[]> {
    return [...this.#networks.values()].map(({ settings }) => structuredClone(settings))
  }

  async saveNetwork(network: NetworkSettings): Promise<void> {
    await this.#write(network.id, (load) => load.saveNetwork(network))
  }

  async gauges(networkId: string): Promise<Gauge[]> {
    const gauges = [...(this.#networks.get(networkId)?.gauges.values() ?? [])]
    return structuredClone(gauges.sort((one, other) => (one.code < other.code ? -1 : 1)))
  }

  async gauge(networkId: string, idOrCode: string): Promise<Gauge | null> {
    const gauges = this.#networks.get(networkId)?.gauges
    const byCode = [...(gauges?.values() ?? [])].find(({ code }) => code === idOrCode)
    return structuredClone(gauges?.get(idOrCode) ?? byCode ?? null)
  }

  async saveGauges(gauges: readonly Gauge[]): Promise<SaveResult> {
    return await this.#write('', (load) => load.saveGauges(gauges))
  }

  async appendReadings(networkId: string, readings: readonly Reading[]): Promise<AppendResult> {
    return await this.#write(networkId, (load) => load.appendReadings(readings))
  }

  async readings(networkId: string, fromDay: IsoDay, toDay: IsoDay): Promise<Reading[]> {
    return this.#networks.get(networkId)?.readings.ofDays(fromDay, toDay) ?? []
  }

  async readingsOfGauge(networkId: string, gaugeId: string, fromDay: IsoDay, toDay: IsoDay): Promise<Reading[]> {
    return (await this.readings(networkId, fromDay, toDay)).filter((reading) => reading.gaugeId === gaugeId)
  }

  async *readingAmounts(networkId: string, fromDay: IsoDay, toDay: IsoDay): AsyncGenerator<ReadingAmount> {
    for (const reading of await this.readings(networkId, fromDay, toDay)) {
      const { id, gaugeId, firstDay, lastDay, amountUm, isTrace } = reading
      yield { readingId: id, gaugeId, firstDay, lastDay, amountUm, isTrace }
    }
  }

  async reading(networkId: string, id: string): Promise<{ reading: Reading; superseded: Reading[] } | null> {
    return this.#networks.get(networkId)?.readings.byId(id) ?? null
  }

  async delivery(networkId: string, key: string): Promise<Delivery | null> {
    return structuredClone(this.#networks.get(networkId)?.deliveries.get(key) ?? null)
  }

  async dayRange(networkId: string): Promise<DayRange | null> {
    const readings = await this.readings(networkId, '0000-01-01', '9999-12-31')
    const [first, last] = [readings[0], readings.at(-1)]
    if (first === undefined || last === undefined) return null
    return {
      firstDay: first.lastDay,
      lastDay: last.lastDay,
      readings: readings.length,
      stored: this.#network(networkId).readings.stored,
    }
  }

  async appendDecision(networkId: string, decision: Decision): Promise<void> {
    await this.appendDecisions(networkId, [decision])
  }

  async appendDecisions(networkId: string, decisions: readonly Decision[]): Promise<void> {
    const network = this.#network(networkId)
    const taken = new Set(network.decisions.map(({ id }) => id))
    for (const { id, readingId } of decisions) {
      if (network.readings.byId(readingId) === null) throw unknownReading(readingId)
      if (taken.has(id)) throw idTaken('decision')
      taken.add(id)
    }
    network.decisions.push(...structuredClone(decisions))
  }

  async appendRuleSetting(networkId: string, setting: RuleSetting): Promise<void> {
    const { ruleSettings } = this.#network(networkId)
    checkRuleSetting(setting)
    if (ruleSettings.some(({ id }) => id === setting.id)) throw idTaken('setting')
    ruleSettings.push({ ...setting, setAtUtc: formatInstant(instantMs(setting.setAtUtc)) })
  }

  async ruleSettings(networkId: string): Promise<RuleSetting[]> {
    return structuredClone(this.#networks.get(networkId)?.ruleSettings ?? [])
  }

  async decisions(networkId: string, fromDay: IsoDay, toDay: IsoDay): Promise<Decision[]> {
    const network = this.#networks.get(networkId)
    if (network === undefined) return []
    const isWithin = ({ readingId }: Decision): boolean => {
      const lastDay = network.readings.byId(readingId)?.reading.lastDay ?? ''
      return lastDay >= fromDay && lastDay <= toDay
    }
    return structuredClone(network.decisions.filter(isWithin))
  }

  async forgetPerson(personId: string): Promise<void> {
    for (const network of this.#networks.values()) {
      for (const decision of network.decisions) {
        const { by } = decision
        if (by.kind === 'person' && by.personId === personId) decision.by = { kind: 'person', name: '' }
      }
      for (const setting of network.ruleSettings) {
        if (setting.byPersonId !== personId) continue
        setting.by = ''
        delete setting.byPersonId
      }
    }
  }

  async decisionsBy(personId: string): Promise<Decision[]> {
    const all = [...this.#networks.values()].flatMap(({ decisions }) => decisions)
    const own = all.filter(({ by }) => by.kind === 'person' && by.personId === personId)
    return structuredClone(own.sort((one, other) => (order(one) < order(other) ? -1 : 1)))
    function order({ decidedAtUtc, id }: Decision): string {
      return `${decidedAtUtc} ${id}`
    }
  }

  async absences(networkId: string, fromDay: IsoDay, toDay: IsoDay): Promise<Absence[]> {
    const absences = await memoryAbsences(this).ofDays(networkId, fromDay, toDay)
    return absences.map(({ gaugeId, firstDay, lastDay }) => ({ networkId, gaugeId, firstDay, lastDay }))
  }

  async saveAbsence(absence: Absence): Promise<void> {
    const id = `${absence.gaugeId} ${absence.firstDay} ${absence.lastDay}`
    const announced = { id, announcedBy: 'coordinator', announcedAtUtc: '1970-01-01T00:00:00Z' }
    await memoryAbsences(this).announce({ ...absence, ...announced })
  }

  async layers(networkId: string): Promise<MapLayer[]> {
    const layers = [...(this.#networks.get(networkId)?.layers ?? [])]
    return structuredClone(layers.sort(([one], [other]) => (one < other ? -1 : 1)).map(([, layer]) => layer))
  }

  async saveLayer(layer: MapLayer): Promise<void> {
    this.#network(layer.networkId).layers.set(`${layer.kind}\n${layer.name}`, structuredClone(layer))
  }

  async cached(networkId: string, key: string): Promise<{ version: string; body: string } | null> {
    return this.#networks.get(networkId)?.cache.get(key) ?? null
  }

  async saveCached(networkId: string, key: string, version: string, body: string): Promise<void> {
    this.#network(networkId).cache.set(key, { version, body })
  }

  async close(): Promise<void> {}

  /** For the other stores in memory that belong to the same networks. */
  networkOf(id: string): MemoryNetwork | null {
    return this.#networks.get(id) ?? null
  }

  #network(id: string): MemoryNetwork {
    const network = this.#networks.get(id)
    if (network === undefined) throw unknownNetwork(id)
    return network
  }

  async #write<T>(networkId: string, work: (load: LedgerLoad) => Promise<T>): Promise<T> {
    const load = await this.load(networkId)
    try {
      const result = await work(load)
      await load.commit()
      return result
    } catch (error) {
      await load.rollback()
      throw error
    }
  }
}

function idTaken(what: 'decision' | 'setting'): LedgerError {
  return new LedgerError('ID_TAKEN', `The ${what} has an id that another ${what} has.`, 'Give each a fresh id.')
}

export function openMemoryLedger(): MemoryLedger {
  return new MemoryLedger()
}

function saveGauges(gauges: readonly Gauge[], stage: (networkId: string) => MemoryNetwork): SaveResult {
  const result: SaveResult = { added: 0, changed: 0, same: 0 }
  for (const gauge of gauges) {
    const network = stage(gauge.networkId)
    const before = [...network.gauges.values()].find(({ code }) => code === gauge.code)
    const after = { ...structuredClone(gauge), id: before?.id ?? gauge.id }
    if (before === undefined) result.added++
    else if (isSameGauge(before, after)) result.same++
    else result.changed++
    network.gauges.set(after.id, after)
  }
  return result
}

function isSameGauge(one: Gauge, other: Gauge): boolean {
  return (Object.keys(one) as (keyof Gauge)[]).every((name) => one[name] === other[name])
}
