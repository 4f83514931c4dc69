import type { Decision } from '@gaugewright/science'
import type { AnnouncedAbsence } from '../../ports/absence.ts'
import type { Delivery } from '../../ports/deliveries.ts'
import type { Gauge, MapLayer, NetworkSettings, RuleSetting } from '../../ports/ledger.ts'
import { MemoryReadings } from './memoryReadings.ts'

/** All that is held of one network. */
export interface MemoryNetwork {
  settings: NetworkSettings
  gauges: Map<string, Gauge>
  readings: MemoryReadings
  decisions: Decision[]
  ruleSettings: RuleSetting[]
  absences: AnnouncedAbsence[]
  layers: Map<string, MapLayer>
  cache: Map<string, { version: string; body: string }>
  deliveries: Map<string, Delivery>
  /** Gauges and readings as copies that can be changed alone; the rest is shared. */
  copy(): MemoryNetwork
}

export function memoryNetwork(settings: NetworkSettings): MemoryNetwork {
  return {
    settings,
    gauges: new Map(),
    readings: new MemoryReadings(),
    decisions: [],
    ruleSettings: [],
    absences: [],
    layers: new Map(),
    cache: new Map(),
    deliveries: new Map(),
    copy() {
      return {
        ...this,
        gauges: new Map(this.gauges),
        readings: this.readings.copy(),
        deliveries: new Map(this.deliveries),
      }
    },
  }
}
