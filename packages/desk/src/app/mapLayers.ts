/** The base map: named areas, rivers, places, relief and outline as the ledger holds them. */
import type { MapLayers } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { type Answer, answered, refused } from './answer.ts'

export async function mapLayers(ports: Pick<Ports, 'ledger'>): Promise<Answer<MapLayers>> {
  const network = (await ports.ledger.networks())[0]
  if (network === undefined) {
    return refused(
      'LEDGER_EMPTY',
      'the ledger holds no network yet',
      'Run "gaugewright import" with a file of gauges and a file of readings, or "gaugewright demo".',
    )
  }
  const layers = await ports.ledger.layers(network.id)
  return answered({ layers: layers.map(({ name, kind, geojson }) => ({ name, kind, geojson })) })
}
