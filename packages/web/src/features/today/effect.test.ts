import type { AreaMean, DayReview, DecideAsk, DocketRow, RollRow, WireDecision } from '@gaugewright/contract'
import { describe, expect, it } from 'vitest'
import { makeFormat } from '../../words/format.ts'
import { messages } from '../../words/messages.ts'
import { effectOf, findingEffects, outcomeBetween } from './effect.ts'
import { effectSentence } from './effectSentence.ts'

const byPerson = { by: { kind: 'person', name: 'me' } } as WireDecision
const byRule = { by: { kind: 'rule', rule: 'let stand at 0.98' } } as WireDecision
const row = (id: string, standsOdds: number | null, decision: WireDecision | null = null) =>
  ({ readingId: id, gaugeId: `g-${id}`, name: `Gauge ${id}`, standsOdds, decision }) as RollRow
const area = (name: string, meanMm: number): AreaMean => ({ name, meanMm, p10Mm: 0, p90Mm: 99, gaugeCount: 5 })

function review(rows: RollRow[], onDocket: string[], areas: AreaMean[] = []): DayReview {
  const docket = onDocket.map((readingId) => ({ readingId, decision: null }) as DocketRow)
  const network = { unit: 'mm' } as DayReview['network']
  const facts = { toDecide: docket.length } as DayReview['facts']
  return { network, facts, roll: rows, docket, areas } as unknown as DayReview
}

const before = review(
  [row('a', 0.02), row('b', 0.99, byRule), row('c', 0.41), row('d', 0.97), row('e', 0.9)],
  ['a', 'c'],
)
const after = review(
  [row('a', 1, byPerson), row('b', 0.4), row('c', 0.52), row('d', 0.96), row('e', 1, byPerson)],
  ['b', 'c'],
)

describe('findingEffects', () => {
  it('tells other readings that moved enough, largest first; not the decided one, nor what a person decided', () => {
    expect(
      findingEffects(before, after, 'a').map(({ readingId, before, after }) => [readingId, before, after]),
    ).toEqual([
      ['b', 0.99, 0.4],
      ['c', 0.41, 0.52],
    ])
  })
  it('tells one that came onto the docket, however little it moved; and the way back is the same', () => {
    const first = review([row('a', 0.901)], [])
    const then = review([row('a', 0.899)], ['a'])
    expect(findingEffects(first, then, 'x').map(({ after }) => after)).toEqual([0.899])
    expect(findingEffects(then, first, 'x').map(({ after }) => after)).toEqual([0.901])
  })
  it('says nothing of gauges that have not read', () => {
    expect(findingEffects(review([row('a', null)], []), review([row('a', 0.5)], []), 'x')).toEqual([])
  })
})

describe('effectSentence', () => {
  const ask: DecideAsk = { readingId: 'a', verdict: 'stands', amended: null, reason: '', by: 'me' }
  const done = { kind: 'decided', ask, gauge: 'Mill Lane' } as const
  const say = (language: 'en' | 'es', effect: ReturnType<typeof effectOf>) =>
    effectSentence(effect, messages[language], makeFormat(messages[language], language, 'mm', 'UTC'))

  it('names what moved most and how many are left, and the new ones among them', () => {
    const effect = effectOf(done, outcomeBetween(before, after, 'a'))
    expect(say('en', effect)).toBe(
      'Mill Lane stands. The map does not change. Gauge b: 99\u00a0% → 40\u00a0% that it stands, and 1 more. 2 to decide, 1 of them new.',
    )
    expect(say('es', effect)).toBe(
      'Mill Lane: válida. El mapa no cambia. Gauge b: 99\u00a0% → 40\u00a0% de que sea válida, y 1 más. 2 por decidir; nuevas, 1.',
    )
  })

  it('says no more than was done while the desk has not answered', () => {
    expect(say('en', effectOf(done, null))).toBe('Mill Lane stands.')
  })

  it('names the county mean that moved most', () => {
    const was = review([], [], [area('Upper Dale', 12.3), area('Lower Dale', 5)])
    const is = review([], [], [area('Upper Dale', 11.2), area('Lower Dale', 5.3)])
    const undone = { kind: 'undone', readingId: 'a', gauge: 'Mill Lane' } as const
    expect(say('en', effectOf(undone, outcomeBetween(was, is, 'a')))).toBe(
      'Undone: Mill Lane is on the docket again. Upper Dale mean 12.3 → 11.2 mm. Nothing left to decide.',
    )
  })
})
