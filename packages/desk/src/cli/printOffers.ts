import type { Candidate, Contacts, PeopleDesk } from '@gaugewright/contract'
import { plainTable } from './plainTable.ts'

export function printOffers({ candidates, figures }: Pick<PeopleDesk, 'candidates' | 'figures'>): string {
  if (candidates.length === 0) return 'No offer has come.\n'
  const table = plainTable(['id', 'name', 'place', 'state', 'days in it', 'next'])
  for (const { id, offer, state, ageDays, isOverdue, next } of candidates) {
    table.push([id, offer.name, offer.place, state, `${Math.floor(ageDays)}${isOverdue ? ' (waits)' : ''}`, next ?? ''])
  }
  const { medianHoursToAnswer: answer, medianDaysToReading: reading, readingShare } = figures
  const said = [
    answer === null ? null : `first answer after ${Math.round(answer)} h`,
    reading === null ? null : `first reading after ${Math.round(reading)} days`,
    readingShare === null ? null : `${Math.round(readingShare * 100)} % came to read`,
  ].filter((one) => one !== null)
  return `${table.toString()}\n${said.length === 0 ? '' : `Medians: ${said.join(', ')}.\n`}`
}

export function printOffer({ id, offer, state, ageDays, events, gauge, next, door }: Candidate): string {
  const lines = [
    `${offer.name} (${id}), by ${door}`,
    `  reach: ${[offer.mail, offer.phone].filter((one) => one !== null).join(', ') || 'nothing given'}`,
    `  place: ${offer.place}`,
    `  yard: ${[offer.yard, offer.yardWords].filter((one) => one !== '').join(', ')}`,
    `  hours: ${[offer.readingTime ?? '', offer.hours].filter((one) => one !== '').join(', ') || 'any'}`,
    ...(gauge === null ? [] : [`  gauge: ${gauge.code} ${gauge.name}`]),
    `  ${state} for ${Math.floor(ageDays)} days${next === null ? '' : `; next: ${next}`}`,
    ...events.map(
      (event) =>
        `    ${event.atUtc.slice(0, 16)} ${event.state}${event.why === '' ? '' : ` (${event.why})`}${event.isTakenBack ? ', taken back' : ''}  ${event.id}`,
    ),
  ]
  return `${lines.join('\n')}\n`
}

export function printContacts({ contacts }: Contacts): string {
  if (contacts.length === 0) return 'Nothing was exchanged yet.\n'
  const table = plainTable(['when', 'how', 'by', 'what', 'sent', 'id'])
  for (const { atUtc, way, by, text, outgoing, isTakenBack, id } of contacts) {
    const first = text.split('\n')[0]!.slice(0, 60)
    table.push([atUtc.slice(0, 16), way, by, isTakenBack ? `${first} (taken back)` : first, outgoing?.state ?? '', id])
  }
  return `${table.toString()}\n`
}
