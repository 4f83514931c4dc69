/** The file of a photo, for the desk's own people. */
import type { Ports } from '../ports/ports.ts'
import { type Answer, answered, refused } from './answer.ts'

export async function readPhoto(
  ports: Pick<Ports, 'ledger' | 'photos'>,
  ask: { sha256: string },
): Promise<Answer<{ jpeg: Uint8Array }>> {
  const network = (await ports.ledger.networks())[0]
  const isName = /^[0-9a-f]{64}$/.test(ask.sha256)
  const found = network === undefined || !isName ? null : await ports.photos.read(network.id, ask.sha256)
  if (found === null) {
    return refused('PHOTO_UNKNOWN', `"${ask.sha256.slice(0, 80)}"`, 'Look at the photos of the report again.')
  }
  return answered({ jpeg: found.jpeg })
}
