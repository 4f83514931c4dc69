/** What every journal promises. Each adapter runs the same suite. */
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { Journal, NewJournalEntry } from '../ports/journal.ts'
import type { Ledger } from '../ports/ledger.ts'

export interface OpenedJournal {
  ledger: Ledger
  journal: Journal
  dispose: () => Promise<void>
}

const entry = (id: string, about: string, kind: string, by: string, networkId = 'north'): NewJournalEntry => ({
  id,
  networkId,
  about,
  kind,
  atUtc: `2026-05-0${id.length}T08:00:00.000Z`,
  by,
  body: { text: `Words of ${id}`, heightM: 1.25, list: [id, null] },
})

export function journalPromises(name: string, open: () => Promise<OpenedJournal>): void {
  describe(`the journal in ${name}`, () => {
    let opened: OpenedJournal
    beforeEach(async () => {
      opened = await open()
      for (const id of ['north', 'south']) {
        await opened.ledger.saveNetwork({
          id,
          name: id,
          timeZone: 'UTC',
          readingTime: '07:00',
          acceptWindowMin: 120,
          unit: 'mm',
          language: 'en',
          docketBelow: 0.5,
        })
      }
    })
    afterEach(() => opened.dispose())

    it('gives back what was written, about whom it was and of which kind, in the order in which it came', async () => {
      const { journal } = opened
      const [a, b, c] = [
        entry('a', 'candidate 1', 'offer', 'P'),
        entry('bb', 'gauge 7', 'survey', 'Q'),
        entry('ccc', 'candidate 1', 'contact', 'P'),
      ]
      expect(await journal.append([a, b])).toBe(2)
      expect(await journal.append([c])).toBe(1)
      expect(await journal.about('north', ['candidate 1'])).toEqual([
        { ...a, takenBack: null },
        { ...c, takenBack: null },
      ])
      expect((await journal.about('north', ['gauge 7', 'candidate 1'])).map(({ id }) => id)).toEqual(['a', 'bb', 'ccc'])
      expect((await journal.ofKinds('north', ['contact', 'survey'])).map(({ id }) => id)).toEqual(['bb', 'ccc'])
      expect(await journal.entry('north', 'bb')).toEqual({ ...b, takenBack: null })
      expect(await journal.entry('south', 'bb')).toBeNull()
      expect(await journal.about('south', ['candidate 1'])).toEqual([])
      expect(await journal.about('north', [])).toEqual([])
    })

    it('an id that is there already changes nothing, in another network it is another entry', async () => {
      const { journal } = opened
      await journal.append([entry('a', 'gauge 1', 'survey', 'P')])
      expect(await journal.append([{ ...entry('a', 'gauge 1', 'survey', 'P'), body: { other: true } }])).toBe(0)
      expect((await journal.entry('north', 'a'))?.body).toMatchObject({ heightM: 1.25 })
      expect(await journal.append([entry('a', 'gauge 1', 'survey', 'P', 'south')])).toBe(1)
    })

    it('takes all entries of a call or none', async () => {
      const { journal } = opened
      const strange = entry('bb', 'gauge 1', 'survey', 'P', 'nowhere')
      const code = await journal
        .append([entry('a', 'gauge 1', 'survey', 'P'), strange])
        .catch((error) => error.problem.code)
      expect(code).toBe('NETWORK_UNKNOWN')
      expect(await journal.about('north', ['gauge 1'])).toEqual([])
    })

    it('an entry is taken back once, stays readable, and can be put back', async () => {
      const { journal } = opened
      await journal.append([entry('a', 'gauge 1', 'survey', 'P')])
      expect(await journal.takeBack('north', 'a', 'Q', '2026-06-01T09:00:00Z')).toBe(true)
      expect(await journal.takeBack('north', 'a', 'R', '2026-06-02T09:00:00Z')).toBe(false)
      expect((await journal.entry('north', 'a'))?.takenBack).toEqual({ by: 'Q', atUtc: '2026-06-01T09:00:00.000Z' })
      expect(await journal.putBack('north', 'a')).toBe(true)
      expect(await journal.putBack('north', 'a')).toBe(false)
      expect((await journal.entry('north', 'a'))?.takenBack).toBeNull()
      expect(await journal.takeBack('north', 'none', 'Q', '2026-06-01T09:00:00Z')).toBe(false)
      expect(await journal.takeBack('nowhere', 'a', 'Q', '2026-06-01T09:00:00Z')).toBe(false)
    })

    it('erases what is about somebody, and nothing else', async () => {
      const { journal } = opened
      await journal.append([
        entry('a', 'candidate 1', 'offer', 'P'),
        entry('bb', 'candidate 12', 'offer', 'P'),
        entry('ccc', 'candidate 1', 'contact', 'Q'),
      ])
      expect(await journal.erase('north', ['candidate 1'])).toBe(2)
      expect(await journal.erase('north', [])).toBe(0)
      expect((await journal.ofKinds('north', ['offer', 'contact'])).map(({ id }) => id)).toEqual(['bb'])
      expect(await journal.append([entry('dddd', 'candidate 1', 'offer', 'P')])).toBe(1)
    })

    it('a person who is forgotten leaves what they wrote, without them, and nothing that is about them', async () => {
      const { journal } = opened
      await journal.append([
        entry('a', 'person P', 'sitting', 'P'),
        entry('bb', 'gauge 1', 'survey', 'P'),
        entry('ccc', 'gauge 1', 'survey', 'Q'),
      ])
      await journal.takeBack('north', 'ccc', 'P', '2026-06-01T09:00:00Z')
      expect((await journal.writtenBy('P')).map(({ id }) => id)).toEqual(['a', 'bb'])
      await journal.forgetPerson('P')
      expect(await journal.entry('north', 'a')).toBeNull()
      expect(await journal.entry('north', 'bb')).toMatchObject({ by: '' })
      expect(await journal.entry('north', 'ccc')).toMatchObject({ by: 'Q', takenBack: { by: '' } })
      expect(await journal.writtenBy('P')).toEqual([])
    })

    it('tells those who listen, until they stop', async () => {
      const { journal } = opened
      const heard: string[] = []
      const failing = journal.listen(() => {
        throw new Error('a screen that is gone')
      })
      const stop = journal.listen((networkId) => heard.push(networkId))
      await journal.append([entry('a', 'gauge 1', 'survey', 'P', 'south')])
      await journal.takeBack('south', 'a', 'Q', '2026-06-01T09:00:00Z')
      stop()
      failing()
      await journal.putBack('south', 'a')
      expect(heard).toEqual(['south', 'south'])
    })
  })
}
