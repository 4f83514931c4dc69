/** The gauges of a network while a delivery goes on: those there already, those it brings, and stations it may meet. */
import type { GaugeRow } from '../../ports/intakeFiles.ts'
import type { Gauge } from '../../ports/ledger.ts'
import { gaugeFromRow } from './gaugeFromRow.ts'

export class GaugeBook {
  readonly networkId: string
  /** Ids by index; grows. */
  readonly ids: string[] = []
  readonly #byCode = new Map<string, Gauge>()
  readonly #indexByCode = new Map<string, number>()
  readonly #stations = new Map<string, GaugeRow>()
  #met: Gauge[] = []

  constructor(networkId: string, gauges: readonly Gauge[]) {
    this.networkId = networkId
    this.know(gauges)
  }

  know(gauges: readonly Gauge[]): void {
    for (const gauge of gauges) {
      this.#byCode.set(gauge.code, gauge)
      if (!this.#indexByCode.has(gauge.code)) this.#indexByCode.set(gauge.code, this.ids.push(gauge.id) - 1)
    }
  }

  /** Stations that become gauges when a reading of theirs comes. */
  addStations(stations: ReadonlyMap<string, GaugeRow>): void {
    for (const [id, station] of stations) this.#stations.set(id, station)
  }

  byCode(code: string): Gauge | undefined {
    return this.#byCode.get(code)
  }

  /** Index of a gauge, which is made from its station where it is met for the first time; null where it is unknown. */
  indexOf(code: string): number | null {
    const known = this.#indexByCode.get(code)
    if (known !== undefined) return known
    const station = this.#stations.get(code)
    if (station === undefined) return null
    const gauge = gaugeFromRow(station, this.networkId, undefined)
    this.#met.push(gauge)
    this.know([gauge])
    return this.#indexByCode.get(code) ?? null
  }

  /** Gauges met since this was last asked; they must be saved before their readings. */
  takeMet(): Gauge[] {
    const met = this.#met
    this.#met = []
    return met
  }
}
