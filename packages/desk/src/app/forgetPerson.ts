/**
 * Erase a person, and keep the readings and reports: their name goes from the gauges they read and from what they decided
 * and filed, with their photos, mails and telephone number; they themselves go last, so that a run that was broken off can
 * be done again.
 */
import type { People, PersonAsk } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { type Doer, writeTrail } from './access/doer.ts'
import { findPerson } from './access/findPerson.ts'
import { lastCoordinatorProblem } from './access/lastCoordinator.ts'
import { wirePeople } from './access/wirePeople.ts'
import { type Answer, answered } from './answer.ts'
import { ofKind, standing } from './people/journalBody.ts'

export async function forgetPerson(
  ports: Pick<
    Ports,
    'access' | 'ledger' | 'outbox' | 'outgoingSettings' | 'urgent' | 'photos' | 'journal' | 'clock' | 'newId'
  >,
  ask: PersonAsk,
  doer: Doer,
): Promise<Answer<People>> {
  const { access, ledger, outbox, clock } = ports
  const found = await findPerson(ports, ask.personId)
  if (!found.ok) return found
  const person = found.value
  const problem = await lastCoordinatorProblem(ports, person.id)
  if (problem !== null) return problem
  const shared = new Set((await access.people()).filter(({ id }) => id !== person.id).flatMap(({ gauges }) => gauges))
  for (const { id } of await ledger.networks()) {
    const theirs = (await ledger.gauges(id)).filter(
      (gauge) =>
        gauge.observerName !== null &&
        (gauge.observerName === person.name || (person.gauges.includes(gauge.id) && !shared.has(gauge.id))),
    )
    if (theirs.length > 0) await ledger.saveGauges(theirs.map((gauge) => ({ ...gauge, observerName: null })))
    if (person.mail !== null) await outbox.forgetRecipient(id, person.mail, 'erasure', clock.nowUtc())
  }
  await forgetJournal(ports, person, shared)
  await ports.outgoingSettings.forgetPerson(person.id)
  await ledger.forgetPerson(person.id)
  for (const { id } of await ledger.networks()) {
    for (const reportId of reportsOf(await ports.urgent.byPerson(person.id))) await ports.photos.erase(id, reportId)
  }
  await ports.urgent.forgetPerson(person.id)
  await access.forget(person.id)
  await writeTrail(ports, doer, { act: 'forgetPerson', subject: person.id })
  return answered(await wirePeople(ports))
}

/** Reports that the person filed, not those that they only looked after. */
function reportsOf(events: Awaited<ReturnType<Ports['urgent']['byPerson']>>): Set<string> {
  return new Set(events.filter(({ what }) => what === 'filed').map(({ reportId }) => reportId))
}

/** Offers, contacts, drills and drawings of the yard go with the person; that a site was surveyed when goes too. */
async function forgetJournal(
  ports: Pick<Ports, 'ledger' | 'journal' | 'photos'>,
  person: { id: string; gauges: readonly string[] },
  shared: ReadonlySet<string>,
): Promise<void> {
  for (const { id } of await ports.ledger.networks()) {
    const given = standing(await ports.journal.ofKinds(id, ['gauge given']), 'gauge given')
    const before = given.filter(({ body }) => body.personId === person.id).map(({ entry }) => entry.about)
    const own = person.gauges.filter((gauge) => !shared.has(gauge)).map((gauge) => `gauge ${gauge}`)
    const about = [...before, ...own]
    for (const { entry } of ofKind(await ports.journal.about(id, about), 'survey'))
      await ports.photos.erase(id, entry.id)
    await ports.journal.erase(id, about)
  }
  await ports.journal.forgetPerson(person.id)
}
