/** The photos that came with an urgent report, in the order in which they came. */
import type { PhotosOfReport } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { type Answer, answered } from './answer.ts'
import { wirePhoto } from './wirePhoto.ts'

export async function photosOfReport(
  ports: Pick<Ports, 'ledger' | 'photos'>,
  ask: { reportId: string },
): Promise<Answer<PhotosOfReport>> {
  const network = (await ports.ledger.networks())[0]
  const photos = network === undefined ? [] : await ports.photos.ofReport(network.id, ask.reportId)
  return answered({ photos: photos.map(wirePhoto) })
}
