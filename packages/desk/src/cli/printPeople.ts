import type { People } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { plainTable } from './plainTable.ts'

/** Everybody as a table; gauges by their codes. */
export async function printPeople({ ledger }: Pick<Ports, 'ledger'>, { people }: People): Promise<string> {
  if (people.length === 0) return 'Nobody yet. The desk opens without a sign-in, on this computer alone.\n'
  const networks = await ledger.networks()
  const gauges = (await Promise.all(networks.map(({ id }) => ledger.gauges(id)))).flat()
  const codeOf = new Map(gauges.map(({ id, code }) => [id, code]))
  const table = plainTable(['name', 'role', 'mail', 'phone', 'gauges', 'signs in by', 'last seen', 'id'])
  for (const person of people) {
    table.push([
      person.name,
      person.role,
      person.mail ?? '-',
      person.phone ?? '-',
      person.gauges.map((id) => codeOf.get(id) ?? id).join(' ') || '-',
      signsInBy(person),
      person.lastSeenOn ?? '-',
      person.id,
    ])
  }
  return `${table.toString()}\n`
}

function signsInBy({ mail, role, hasPassword }: People['people'][number]): string {
  if (hasPassword) return role === 'observer' && mail !== null ? 'password, link' : 'password'
  return role === 'observer' && mail !== null ? 'link' : 'nothing yet'
}
