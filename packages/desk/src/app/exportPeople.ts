/**
 * Everybody who reads a gauge, as CSV or vCards: for another program, to move house, or to fill in addresses of those whose
 * name alone is known. The same file can be imported.
 */
import type { ExportPeopleAsk } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { type Doer, writeTrail } from './access/doer.ts'
import { phonesOf } from './access/phones.ts'
import { type Answer, answered } from './answer.ts'
import { namesAlone } from './people/namesAlone.ts'
import { peopleCsv, peopleVcards } from './people/peopleRows.ts'

export async function exportPeople(
  ports: Pick<Ports, 'access' | 'ledger' | 'outgoingSettings' | 'clock' | 'newId'>,
  { format }: ExportPeopleAsk,
  doer: Doer,
): Promise<Answer<{ text: string; fileName: string }>> {
  const phones = await phonesOf(ports)
  const codeOf = new Map<string, string>()
  for (const { id } of await ports.ledger.networks()) {
    for (const gauge of await ports.ledger.gauges(id)) codeOf.set(gauge.id, gauge.code)
  }
  const people = (await ports.access.people()).filter(({ role }) => role === 'observer')
  const out = people.map(({ id, name, mail, language, gauges }) => ({
    name,
    mail,
    phone: phones.get(id) ?? null,
    language,
    codes: gauges.flatMap((gauge) => codeOf.get(gauge) ?? []),
  }))
  for (const { name, language, gauges } of await namesAlone(ports)) {
    out.push({ name, mail: null, phone: null, language, codes: gauges.map(({ code }) => code) })
  }
  await writeTrail(ports, doer, { act: 'exportPeople', subject: null })
  return answered(
    format === 'csv'
      ? { text: peopleCsv(out), fileName: 'people.csv' }
      : { text: peopleVcards(out), fileName: 'people.vcf' },
  )
}
