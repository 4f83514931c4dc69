/** The public page: the coordinator's words, the rough bounds of the network, and a ticket for one offer. */
import type { OfferPage } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { newSecret } from './access/secrets.ts'
import { type Answer, answered } from './answer.ts'
import { offerPageWords } from './people/offerPageWords.ts'
import { signTicket, ZERO_BITS } from './people/offerTicket.ts'
import { firstNetwork } from './urgent/firstNetwork.ts'

/** What everybody may see of the base map. */
async function baseMap(ports: Pick<Ports, 'ledger'>, networkId: string): Promise<Pick<OfferPage, 'map' | 'places'>> {
  const map: OfferPage['map'] = []
  const places: OfferPage['places'] = []
  for (const { name, kind, geojson } of await ports.ledger.layers(networkId)) {
    if (kind === 'river' || kind === 'outline' || kind === 'area') map.push({ name, kind, geojson })
    if (kind === 'place') places.push(...placesIn(geojson))
  }
  return { map, places: places.slice(0, 40) }
}

interface PlaceFeatures {
  features?: { geometry?: { type?: string; coordinates?: number[] }; properties?: { name?: unknown } }[]
}

function placesIn(geojson: unknown): OfferPage['places'] {
  return ((geojson as PlaceFeatures).features ?? []).flatMap(({ geometry, properties }) => {
    const [lonDeg, latDeg] = geometry?.type === 'Point' ? (geometry.coordinates ?? []) : []
    const name = properties?.name
    return typeof name === 'string' && lonDeg !== undefined && latDeg !== undefined ? [{ name, latDeg, lonDeg }] : []
  })
}

export async function offerPage(
  ports: Pick<Ports, 'ledger' | 'journal' | 'outgoingSettings' | 'clock'>,
): Promise<Answer<OfferPage>> {
  const network = await firstNetwork(ports)
  if (!network.ok) return network
  const { id, name, language } = network.value
  const { isOpen, en, es, keepMonths } = await offerPageWords(ports, id)
  const secret = await ports.outgoingSettings.linkSecret(id, newSecret())
  const gauges = await ports.ledger.gauges(id)
  const rough = (degrees: number, up: boolean) => (up ? Math.ceil(degrees * 10) : Math.floor(degrees * 10)) / 10
  const lats = gauges.map(({ latDeg }) => latDeg)
  const lons = gauges.map(({ lonDeg }) => lonDeg)
  return answered({
    network: name,
    language,
    isOpen,
    words: { en, es },
    keepMonths,
    ...(await baseMap(ports, id)),
    bounds:
      gauges.length === 0
        ? null
        : [
            rough(Math.min(...lons), false),
            rough(Math.min(...lats), false),
            rough(Math.max(...lons), true),
            rough(Math.max(...lats), true),
          ],
    ticket: {
      ticket: signTicket(secret, id, Date.parse(ports.clock.nowUtc()), newSecret().slice(0, 16)),
      zeroBits: ZERO_BITS,
    },
  })
}
