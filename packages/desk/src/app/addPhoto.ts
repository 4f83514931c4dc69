/**
 * A photo for an urgent report, by whoever filed it or reads its gauge, or works at the desk. What is kept is drawn anew:
 * pixels alone, whatever the sender has stripped already.
 */
import { type Actor, type AddPhotoAsk, isAtLeast, type Photo } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import type { UrgentEvent } from '../ports/urgent.ts'
import { type Answer, answered, refused } from './answer.ts'
import { wirePhoto } from './wirePhoto.ts'

export async function addPhoto(
  ports: Pick<Ports, 'ledger' | 'urgent' | 'photos' | 'redrawPhoto' | 'clock'>,
  ask: AddPhotoAsk & { actor: Actor },
): Promise<Answer<Photo>> {
  const network = (await ports.ledger.networks())[0]
  const events = network === undefined ? [] : await ports.urgent.eventsOf(network.id, ask.reportId)
  if (network === undefined || !mayAddTo(events, ask.actor)) {
    return refused('URGENT_UNKNOWN', `the report "${ask.reportId}"`, 'Send the report first, then its photos.')
  }
  const clean = await ports.redrawPhoto(Buffer.from(ask.imageBase64, 'base64'))
  if (clean === null) {
    return refused(
      'PHOTO_UNREADABLE',
      'a file that is no photo that can be opened',
      'Send a JPEG, PNG or WebP of at most 3 MB and 40 megapixels. The report itself counts without it.',
    )
  }
  const stored = await ports.photos.add({
    ...clean,
    networkId: network.id,
    reportId: ask.reportId,
    receivedAtUtc: ports.clock.nowUtc(),
    by: ask.actor.name,
  })
  return answered(wirePhoto(stored))
}

function mayAddTo(events: readonly UrgentEvent[], actor: Actor): boolean {
  if (events.length === 0) return false
  if (isAtLeast(actor.role, 'colleague')) return true
  return events.some(
    (event) =>
      event.what === 'filed' &&
      (event.byPersonId === actor.personId ||
        (event.report.where.kind === 'gauge' && actor.gauges.includes(event.report.where.gaugeId))),
  )
}
