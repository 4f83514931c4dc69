/** People as files, in and out; who may be there twice; and what an erasure takes with it. */
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { duplicatePeople } from '../src/app/duplicatePeople.ts'
import { exportPeople } from '../src/app/exportPeople.ts'
import { forgetPerson } from '../src/app/forgetPerson.ts'
import { importPeople } from '../src/app/importPeople.ts'
import { likeNames } from '../src/app/people/likeNames.ts'
import { openTestDesk } from './support/openDesk.ts'

const doer = { personId: null, door: 'command line' as const }
let desk: Awaited<ReturnType<typeof openTestDesk>>
let code: string
beforeEach(async () => {
  desk = await openTestDesk({}, 5)
  code = (await desk.ports.ledger.gauge('small', 'gC3'))!.code
})
afterEach(() => desk.app.close())

const csv = () =>
  `Name,Mail,Phone,Language,Gauges\n"Sánchez, Lucía",Lucia@home.example,+34 600 123 456,es,${code}\nOlu Example,olu@home.example,,,\n`
const take = async (text: string, format: 'csv' | 'vcard' = 'csv', keepGood = false) => {
  const answer = await importPeople(desk.ports, { text, format, keepGood }, doer)
  if (!answer.ok) throw new Error(answer.problem.code)
  return answer.value
}

describe('people from a file', () => {
  it('come with names in quotation marks, addresses in lower case, telephone and gauges; twice is once', async () => {
    expect(await take(csv())).toEqual({ added: 2, changed: 0, same: 0, refused: [] })
    expect(await desk.ports.access.personByMail('lucia@home.example')).toMatchObject({
      name: 'Sánchez, Lucía',
      role: 'observer',
      language: 'es',
      gauges: ['gC3'],
    })
    expect(await take(csv())).toMatchObject({ added: 0, changed: 0, same: 2 })
    expect(await take(csv().replace('Olu Example', 'Olu Other'))).toMatchObject({ changed: 1, same: 1 })
  })

  it('are taken whole or not at all, each bad row with its line; the good alone when asked', async () => {
    const text = `${csv()}Bad One,not mail,,,\nBad Two,b@home.example,,,ZZZZZ\nBad Three,olu@home.example,,,\n,x@home.example,,,\n`
    const refused = await take(text)
    expect(refused).toMatchObject({ added: 0 })
    expect(refused.refused.map(({ line }) => line)).toEqual([4, 5, 6, 7])
    expect(refused.refused[0]).toMatchObject({ seen: 'mail: "not mail"', advice: 'not a mail address' })
    expect(await desk.ports.access.people()).toEqual([])
    expect(await take(text, 'csv', true)).toMatchObject({ added: 2 })
  })

  it('say which column is wanted where there is none, and that a card is broken', async () => {
    expect((await take('who,where\na,b\n')).refused[0]).toMatchObject({
      line: 1,
      seen: expect.stringContaining('no column "name"'),
    })
    expect((await take('BEGIN:VCARD\nFN:Half', 'vcard')).refused).toHaveLength(1)
  })

  it('vCard 4.0 of RFC 6350 is read: folded lines, escaped commas, a telephone as URI', async () => {
    // After the examples of RFC 6350, 6.2.1, 6.4.1 and 3.2 (folding).
    const text = [
      'BEGIN:VCARD',
      'VERSION:4.0',
      'FN:Mr. John Q. Pub',
      ' lic\\, Esq.',
      'EMAIL:jqpublic@xyz.example.com',
      'TEL;VALUE=uri:tel:+1-555-555-5555',
      'LANG:es',
      'END:VCARD',
      '',
    ].join('\r\n')
    expect(await take(text, 'vcard')).toMatchObject({ added: 1, refused: [] })
    expect(await desk.ports.access.personByMail('jqpublic@xyz.example.com')).toMatchObject({
      name: 'Mr. John Q. Public, Esq.',
      language: 'es',
    })
  })

  it('go out and come back in the same, both ways', async () => {
    await take(csv())
    for (const format of ['csv', 'vcard'] as const) {
      const out = await exportPeople(desk.ports, { format }, doer)
      if (!out.ok) throw new Error(out.problem.code)
      expect(await take(out.value.text, format)).toMatchObject({ added: 0, changed: 0, same: 2 + 35, refused: [] })
    }
  })

  it('go out with the names that stand at gauges alone, to be given an address', async () => {
    const out = await exportPeople(desk.ports, { format: 'csv' }, doer)
    if (!out.ok) throw new Error(out.problem.code)
    const row = `Observer C3,,,en,${code}`
    expect(out.value.text).toContain(row)
    const filled = out.value.text.replace(row, `Observer C3,c3@home.example,,en,${code}`)
    expect(await take(filled)).toEqual({ added: 1, changed: 0, same: 35, refused: [] })
    expect(await desk.ports.access.personByMail('c3@home.example')).toMatchObject({ gauges: ['gC3'] })
  })

  it('a cell that a spreadsheet would run as a formula does not begin like one', async () => {
    await take('name\n=HYPERLINK(1)\n')
    const out = await exportPeople(desk.ports, { format: 'csv' }, doer)
    expect(out.ok && out.value.text).toContain("'=HYPERLINK(1)")
  })
})

describe('people who may be there twice', () => {
  it('are told with what speaks for it; a shared gauge or telephone alone is a household', async () => {
    await take(
      `name,mail,phone,gauges\nLucía Sánchez,a@home.example,+34600123456,${code}\nSanchez Lucia,b@home.example,+34600123456,\nOlu Example,c@home.example,+34600123456,${code}\n`,
    )
    const found = await duplicatePeople(desk.ports)
    expect(found.ok && found.value.pairs).toMatchObject([{ reasons: ['same telephone', 'same name'] }])
  })

  it('names are alike whatever the order and accents, or one letter apart', () => {
    expect(likeNames('Zoltán Szabó', 'szabo, zoltan')).toBe('same name')
    expect(likeNames('Marguerite Dupont', 'Margarite Dupont')).toBe(null)
    expect(likeNames('Marguerite Dupont', 'Margueritte Dupont')).toBe('like name')
    expect(likeNames('Ana', 'Ane')).toBe(null)
  })
})

describe('an erasure', () => {
  it('takes offers, contacts, drills and drawings of the yard with the person, and leaves the readings', async () => {
    await take(csv())
    const person = (await desk.ports.access.personByMail('lucia@home.example'))!
    const entry = (id: string, about: string, kind: string) => ({
      id,
      networkId: 'small',
      about,
      kind,
      atUtc: '2026-05-01T00:00:00Z',
      by: person.id,
      body: {},
    })
    await desk.ports.journal.append([
      entry('1', `person ${person.id}`, 'sitting'),
      entry('2', 'gauge gC3', 'survey'),
      entry('3', 'gauge gA1', 'survey'),
    ])
    await forgetPerson(desk.ports, { personId: person.id }, doer)
    expect(await desk.ports.journal.about('small', [`person ${person.id}`, 'gauge gC3'])).toEqual([])
    expect(await desk.ports.journal.entry('small', '3')).toMatchObject({ by: '' })
    expect(
      (await desk.ports.ledger.readingsOfGauge('small', 'gC3', '0001-01-01', '9999-12-31')).length,
    ).toBeGreaterThan(0)
  })
})
