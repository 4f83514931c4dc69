/** Everything that is held on one person, as JSON: for the person who asks what is known of them. */
import type { PersonAsk, PersonExport } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { type Doer, writeTrail } from './access/doer.ts'
import { findPerson } from './access/findPerson.ts'
import { wirePerson } from './access/wirePeople.ts'
import { type Answer, answered } from './answer.ts'
import { ofKind, standing } from './people/journalBody.ts'

export async function exportPerson(
  ports: Pick<
    Ports,
    | 'access'
    | 'ledger'
    | 'outbox'
    | 'outgoingSettings'
    | 'absences'
    | 'journal'
    | 'urgent'
    | 'photos'
    | 'clock'
    | 'newId'
  >,
  ask: PersonAsk,
  doer: Doer,
): Promise<Answer<PersonExport>> {
  const { access, ledger, outbox, clock } = ports
  const found = await findPerson(ports, ask.personId)
  if (!found.ok) return found
  const person = found.value
  const madeAtUtc = clock.nowUtc()
  await writeTrail(ports, doer, { act: 'exportPerson', subject: person.id })
  const gauges: unknown[] = []
  const readings: unknown[] = []
  const mails: unknown[] = []
  const reminders: unknown[] = []
  const absences: unknown[] = []
  const photos: unknown[] = []
  const journal: unknown[] = []
  const urgentReports = await ports.urgent.byPerson(person.id)
  const filed = new Set(urgentReports.filter(({ what }) => what === 'filed').map(({ reportId }) => reportId))
  for (const { id } of await ledger.networks()) {
    for (const gauge of await ledger.gauges(id)) {
      if (!person.gauges.includes(gauge.id)) continue
      gauges.push(gauge)
      readings.push(...(await withEarlier(ledger, id, gauge.id)))
      absences.push(...(await ports.absences.ofGauge(id, gauge.id)))
    }
    const choice = (await ports.outgoingSettings.choices(id)).get(person.id)
    if (choice !== undefined) reminders.push(choice)
    const given = standing(await ports.journal.ofKinds(id, ['gauge given']), 'gauge given')
    const before = given.filter(({ body }) => body.personId === person.id).map(({ entry }) => entry.about)
    const about = [`person ${person.id}`, ...before, ...person.gauges.map((gauge) => `gauge ${gauge}`)]
    const entries = await ports.journal.about(id, about)
    journal.push(...entries)
    for (const { entry } of ofKind(entries, 'survey')) photos.push(...(await ports.photos.ofReport(id, entry.id)))
    for (const reportId of filed) photos.push(...(await ports.photos.ofReport(id, reportId)))
    if (person.mail !== null) mails.push(...(await outbox.toRecipient(id, person.mail)).map(withoutSecret))
  }
  return answered({
    madeAtUtc,
    person: await wirePerson(ports, person),
    sections: {
      gauges,
      readings,
      absences,
      decisions: await ledger.decisionsBy(person.id),
      journal,
      written: await ports.journal.writtenBy(person.id),
      urgentReports,
      photos,
      mails,
      reminders,
      sessions: (await access.sessionsOf(person.id, madeAtUtc)).map(({ startedAtUtc, endsAtUtc }) => ({
        startedAtUtc,
        endsAtUtc,
      })),
      signInLinks: (await access.linksOf(person.id)).map(({ askedAtUtc, endsAtUtc }) => ({ askedAtUtc, endsAtUtc })),
      trail: await wholeTrail(access, person.id),
    },
  })
}

/** A link that still works would let whoever holds the export in. */
function withoutSecret(mail: Awaited<ReturnType<Ports['outbox']['toRecipient']>>[number]): unknown {
  return mail.isSecret ? { ...mail, content: 'left out: it holds a link to sign in' } : mail
}

/** Current readings, each followed by those it superseded. */
async function withEarlier(ledger: Ports['ledger'], networkId: string, gaugeId: string): Promise<unknown[]> {
  const all: unknown[] = []
  for (const reading of await ledger.readingsOfGauge(networkId, gaugeId, '0001-01-01', '9999-12-31')) {
    all.push(reading)
    if (reading.supersedes !== null) all.push(...((await ledger.reading(networkId, reading.id))?.superseded ?? []))
  }
  return all
}

async function wholeTrail(access: Ports['access'], personId: string): Promise<unknown[]> {
  const PAGE = 1000
  const entries = []
  for (let beforeId: string | undefined; ; ) {
    const page = await access.audit({ personId, beforeId, limit: PAGE })
    entries.push(...page)
    beforeId = page.at(-1)?.id
    if (page.length < PAGE) return entries
  }
}
