/** People in files: CSV with named columns (RFC 4180), and vCard 3 and 4 (RFC 2426, RFC 6350). Pure: text in, rows out. */
import { addPersonAskSchema, phoneSchema } from '@gaugewright/contract'
import ICAL from 'ical.js'
import Papa from 'papaparse'

export interface PersonRow {
  /** Line of a table, or number of a card, from 1. */
  line: number
  name: string
  mail: string | null
  phone: string | null
  language: 'en' | 'es'
  /** Codes of gauges. */
  gauges: string[]
}
export interface RefusedPerson {
  line: number
  seen: string
  advice: string
}
export interface PeopleRead {
  rows: PersonRow[]
  refused: RefusedPerson[]
}

const columns = ['name', 'mail', 'phone', 'language', 'gauges'] as const

export function readPeopleCsv(text: string): PeopleRead {
  const { data, meta, errors } = Papa.parse<Record<string, string>>(text.replace(/^\uFEFF/, ''), {
    header: true,
    skipEmptyLines: 'greedy',
    transformHeader: (name) => name.trim().toLowerCase(),
  })
  if (!(meta.fields ?? []).includes('name')) {
    return refusedWhole(
      `no column "name" among ${(meta.fields ?? []).join(', ') || 'nothing'}`,
      `Name the columns: ${columns.join(', ')}.`,
    )
  }
  const broken = errors.find(({ type }) => type === 'Quotes')
  if (broken !== undefined) {
    return {
      rows: [],
      refused: [{ line: (broken.row ?? 0) + 2, seen: broken.message, advice: 'Close the quotation marks.' }],
    }
  }
  return gather(data.map((row, index) => ({ line: index + 2, fields: row })))
}

export function readPeopleVcard(text: string): PeopleRead {
  let cards: unknown[]
  try {
    const parsed = ICAL.parse(text) as unknown[]
    cards = Array.isArray(parsed[0]) ? parsed : [parsed]
  } catch (error) {
    const seen = error instanceof Error ? error.message : String(error)
    return refusedWhole(seen.slice(0, 200), 'Give vCards, from BEGIN:VCARD to END:VCARD.')
  }
  return gather(
    cards.map((card, index) => {
      const component = new ICAL.Component(card as ConstructorParameters<typeof ICAL.Component>[0])
      const text0 = (name: string) => {
        const value = component.getFirstPropertyValue(name)
        return value === null || value === undefined ? '' : String(value)
      }
      return {
        line: index + 1,
        fields: {
          name: text0('fn'),
          mail: text0('email').replace(/^mailto:/i, ''),
          phone: text0('tel').replace(/^tel:/i, ''),
          language: text0('lang').slice(0, 2).toLowerCase(),
          gauges: text0('x-gauges'),
        },
      }
    }),
  )
}

function gather(all: { line: number; fields: Record<string, string | undefined> }[]): PeopleRead {
  const read: PeopleRead = { rows: [], refused: [] }
  const mails = new Map<string, number>()
  for (const { line, fields } of all) {
    // Our own files guard cells that look like formulas with an apostrophe.
    const or = (name: string) => (fields[name]?.trim() ?? '').replace(/^'(?=[=+@\-\t\r])/, '')
    const phone = or('phone').replace(/[\s().-]/g, '')
    const typed = {
      name: or('name'),
      role: 'observer',
      mail: or('mail') === '' ? null : or('mail'),
      language: or('language') === '' ? 'en' : or('language').toLowerCase(),
      gauges: or('gauges')
        .split(/[;,\s]+/)
        .filter((code) => code !== ''),
    }
    const person = addPersonAskSchema.safeParse(typed)
    const number = phone === '' ? null : phoneSchema.safeParse(phone)
    const refuse = (seen: string, advice: string) => read.refused.push({ line, seen, advice })
    if (!person.success) {
      const issue = person.error.issues[0]!
      const field = String(issue.path[0] ?? '')
      refuse(`${field}: "${or(field)}"`, issue.message)
    } else if (number !== null && !number.success) refuse(`phone: "${or('phone')}"`, number.error.issues[0]!.message)
    else if (person.data.mail !== null && mails.has(person.data.mail)) {
      refuse(
        `mail: "${person.data.mail}"`,
        `Line ${mails.get(person.data.mail)} has it already: each person needs an address of their own.`,
      )
    } else {
      if (person.data.mail !== null) mails.set(person.data.mail, line)
      const { name, mail, language, gauges } = person.data
      read.rows.push({ line, name, mail, phone: phone === '' ? null : phone, language, gauges })
    }
  }
  return read
}

function refusedWhole(seen: string, advice: string): PeopleRead {
  return { rows: [], refused: [{ line: 1, seen, advice }] }
}

export interface PersonOut {
  name: string
  mail: string | null
  phone: string | null
  language: string
  codes: string[]
}

export function peopleCsv(people: readonly PersonOut[]): string {
  const rows = people.map(({ name, mail, phone, language, codes }) => [
    name,
    mail ?? '',
    phone ?? '',
    language,
    codes.join(';'),
  ])
  // A cell that a spreadsheet would take for a formula gets an apostrophe.
  return `${Papa.unparse({ fields: [...columns], data: rows }, { escapeFormulae: true, newline: '\n' })}\n`
}

export function peopleVcards(people: readonly PersonOut[]): string {
  return people
    .map(({ name, mail, phone, language, codes }) => {
      const card = new ICAL.Component('vcard')
      card.updatePropertyWithValue('version', '4.0')
      card.updatePropertyWithValue('fn', name)
      if (mail !== null) card.updatePropertyWithValue('email', mail)
      if (phone !== null) card.updatePropertyWithValue('tel', `tel:${phone}`)
      card.updatePropertyWithValue('lang', language)
      if (codes.length > 0) card.updatePropertyWithValue('x-gauges', codes.join(' '))
      return `${card.toString()}\r\n`
    })
    .join('')
}
