// Contents. Named exports only.

export { makeScenario } from './makeScenario.ts'
export type { Feature, FeatureCollection, Geometry } from './map/geojson.ts'
export type { ScenarioLayer } from './map/makeBasinMap.ts'
export { inventMail, inventOffers, type ScenarioOffer } from './people/inventOffers.ts'
export { inventYard } from './people/inventYard.ts'
export { Random } from './random/random.ts'
export { readingAt } from './readingAt.ts'
export type {
  Scenario,
  ScenarioAbsence,
  ScenarioAsk,
  ScenarioGauge,
  ScenarioNetwork,
  ScenarioReading,
  ScenarioReadings,
  ScenarioTruth,
} from './scenario.ts'
