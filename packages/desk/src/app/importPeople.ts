/**
 * Observers from a file: whole, or not at all unless the good rows are asked for. Whoever has the same mail address is
 * changed; the same file again changes nothing. A file makes nobody more than an observer.
 */
import type { ImportedPeople, ImportPeopleAsk } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { type Doer, writeTrail } from './access/doer.ts'
import { gaugeIds } from './access/gaugeIds.ts'
import { phonesOf, savePhone } from './access/phones.ts'
import { type Answer, answered } from './answer.ts'
import { namesAlone } from './people/namesAlone.ts'
import { type PersonRow, type RefusedPerson, readPeopleCsv, readPeopleVcard } from './people/peopleRows.ts'

export async function importPeople(
  ports: Pick<Ports, 'access' | 'ledger' | 'outgoingSettings' | 'clock' | 'newId'>,
  ask: ImportPeopleAsk,
  doer: Doer,
): Promise<Answer<ImportedPeople>> {
  const read = ask.format === 'csv' ? readPeopleCsv(ask.text) : readPeopleVcard(ask.text)
  const refused: RefusedPerson[] = [...read.refused]
  const good: (PersonRow & { ids: string[] })[] = []
  for (const row of read.rows) {
    const ids = await gaugeIds(ports, row.gauges)
    if (ids.ok) good.push({ ...row, ids: ids.value })
    else refused.push({ line: row.line, seen: `gauges: ${ids.problem.seen}`, advice: ids.problem.advice })
  }
  refused.sort((a, b) => a.line - b.line)
  const counts = { added: 0, changed: 0, same: 0 }
  if (refused.length > 0 && !ask.keepGood) return answered({ ...counts, refused })
  const people = await ports.access.people()
  const phones = await phonesOf(ports)
  const alone = new Map((await namesAlone(ports)).map((one) => [one.name, one.gauges.map(({ id }) => id)]))
  for (const { name, mail, phone, language, ids } of good) {
    // A name at its gauges, as it was exported, and nothing that the desk does not know.
    if (mail === null && phone === null && ids.length > 0 && ids.every((id) => alone.get(name)?.includes(id))) {
      counts.same++
      continue
    }
    const known = people.find((one) =>
      mail === null
        ? one.mail === null && one.name === name && ids.every((id) => one.gauges.includes(id))
        : one.mail === mail,
    )
    const gauges = [...new Set([...(known?.gauges ?? []), ...ids])]
    const isSame =
      known !== undefined &&
      known.name === name &&
      known.language === language &&
      gauges.length === known.gauges.length &&
      (phone === null || phones.get(known.id) === phone)
    counts[known === undefined ? 'added' : isSame ? 'same' : 'changed']++
    if (isSame) continue
    const id = known?.id ?? ports.newId()
    const role = known?.role ?? 'observer'
    const addedAtUtc = known?.addedAtUtc ?? ports.clock.nowUtc()
    await ports.access.savePerson({ id, name, role, mail, language, gauges, addedAtUtc })
    if (phone !== null && phones.get(id) !== phone) await savePhone(ports, id, phone, doer.personId ?? doer.door)
    await writeTrail(ports, doer, { act: 'importPeople', subject: id })
  }
  return answered({ ...counts, refused })
}
