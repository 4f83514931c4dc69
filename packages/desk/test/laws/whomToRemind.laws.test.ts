/** What must hold of reminders for any roll, any people and whatever they chose. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type RemindAsk, whomToRemind } from '../../src/app/reminders/whomToRemind.ts'

const answers = ['read', 'read late', 'multi-day open', 'away', 'silent'] as const
const gaugeIds = ['g1', 'g2', 'g3', 'g4', 'g5']
const personIds = ['p1', 'p2', 'p3', 'p4']

const asks: fc.Arbitrary<RemindAsk> = fc
  .record({
    roll: fc.array(fc.record({ gaugeId: fc.constantFrom(...gaugeIds), answer: fc.constantFrom(...answers) }), {
      maxLength: 5,
    }),
    people: fc.uniqueArray(
      fc.record({
        personId: fc.constantFrom(...personIds),
        language: fc.constantFrom('en' as const, 'es' as const),
        mail: fc.option(fc.constantFrom('a@example.org', 'b@example.org')),
        gauges: fc.uniqueArray(fc.constantFrom(...gaugeIds)),
      }),
      { selector: ({ personId }) => personId, maxLength: 4 },
    ),
    choices: fc.array(
      fc.tuple(
        fc.constantFrom(...personIds),
        fc.record({
          wants: fc.boolean(),
          way: fc.constantFrom('mail' as const, 'text' as const),
          phone: fc.option(fc.constant('+15550100123')),
        }),
      ),
    ),
    reminded: fc.array(fc.constantFrom(...personIds)),
  })
  .map(({ roll, people, choices, reminded }) => ({
    roll: [
      ...new Map(roll.map((row) => [row.gaugeId, { ...row, code: row.gaugeId.toUpperCase(), name: '' }])).values(),
    ],
    people: people.map((person) => ({ ...person, name: `Name of ${person.personId}` })),
    choices: new Map(choices),
    reminded: new Set(reminded),
  }))

const holds = (law: (ask: RemindAsk) => void): void => fc.assert(fc.property(asks, law), { numRuns: 2000 })
const answerOf = (ask: RemindAsk, gaugeId: string) => ask.roll.find((row) => row.gaugeId === gaugeId)?.answer

describe('whomToRemind', () => {
  it('reminds of silent gauges alone, and only their own', () => {
    holds((ask) => {
      for (const { person, gauges } of whomToRemind(ask).remind) {
        expect(gauges.length).toBeGreaterThan(0)
        for (const { gaugeId } of gauges) {
          expect(person.gauges).toContain(gaugeId)
          expect(answerOf(ask, gaugeId)).toBe('silent')
        }
      }
    })
  })

  it('never reminds who is away, said stop, or was reminded; and nobody twice', () => {
    holds((ask) => {
      const { remind } = whomToRemind(ask)
      const ids = remind.map(({ person }) => person.personId)
      expect(new Set(ids).size).toBe(ids.length)
      for (const { person } of remind) {
        expect(person.gauges.map((gaugeId) => answerOf(ask, gaugeId))).not.toContain('away')
        expect(ask.choices.get(person.personId)?.wants).not.toBe(false)
        expect(ask.reminded.has(person.personId)).toBe(false)
      }
    })
  })

  it('forgets nobody: whoever reads an expected gauge is reminded or left out with a reason, one of the two', () => {
    holds((ask) => {
      const { remind, leftOut } = whomToRemind(ask)
      const expected = ask.people.filter(({ gauges }) => gauges.some((id) => answerOf(ask, id) !== undefined))
      const named = [...remind, ...leftOut].map(({ person }) => person.personId).sort()
      expect(named).toEqual(expected.map(({ personId }) => personId).sort())
    })
  })

  it('reminds whoever is silent everywhere, wants it, has an address and was not reminded', () => {
    holds((ask) => {
      const reminded = new Set(whomToRemind(ask).remind.map(({ person }) => person.personId))
      for (const person of ask.people) {
        const own = person.gauges.map((id) => answerOf(ask, id)).filter((answer) => answer !== undefined)
        const isSilent = own.length > 0 && own.every((answer) => answer === 'silent')
        const wants = ask.choices.get(person.personId)?.wants !== false
        if (isSilent && wants && person.mail !== null && !ask.reminded.has(person.personId)) {
          expect(reminded).toContain(person.personId)
        }
      }
    })
  })

  it('asked again with those it reminded, reminds nobody', () => {
    holds((ask) => {
      const first = whomToRemind(ask).remind.map(({ person }) => person.personId)
      expect(whomToRemind({ ...ask, reminded: new Set([...ask.reminded, ...first]) }).remind).toEqual([])
    })
  })

  it('one more reading never adds a reminder', () => {
    holds((ask) => {
      const before = new Set(whomToRemind(ask).remind.map(({ person }) => person.personId))
      for (const [index, row] of ask.roll.entries()) {
        const roll = ask.roll.with(index, { ...row, answer: 'read' as const })
        // A reading in place of an absence or of an open total says that the person is back.
        if (row.answer === 'away') continue
        for (const { person } of whomToRemind({ ...ask, roll }).remind) expect(before).toContain(person.personId)
      }
    })
  })

  it('does not hang on the order of the roll', () => {
    holds((ask) => {
      const turned = whomToRemind({ ...ask, roll: [...ask.roll].reverse() })
      expect(turned).toEqual(whomToRemind(ask))
    })
  })
})
