import type { AreaMean, DayReview, RollRow, WhatIf } from '@gaugewright/contract'
import { describe, expect, it } from 'vitest'
import { printWhatIf } from './printWhatIf.ts'

const area = (name: string, meanMm: number): AreaMean => ({ name, meanMm, p10Mm: 1, p90Mm: 30, gaugeCount: 7 })
const told = {
  before: { areas: [area('Upper Dale', 12.34), area('Lower Dale', 5.01)] },
  after: { areas: [area('Upper Dale', 11.26), area('Lower Dale', 5.02)] },
  meanAbsoluteChangeMm: 0.254,
  findings: [
    {
      readingId: 'r2',
      gaugeId: 'g2',
      code: 'B2X41',
      name: 'Mill Lane',
      amountUm: 18_300,
      isTrace: false,
      before: { canTell: true, standsOdds: 0.31, likeliest: 'decimal', likeliestOdds: 0.6, toDecide: true },
      after: { canTell: true, standsOdds: 0.996, likeliest: 'carried', likeliestOdds: 0.003, toDecide: false },
    },
  ],
  findingCount: 3,
  toDecideBefore: 4,
  toDecideAfter: 2,
} as unknown as WhatIf
const row = { code: 'A7C12', name: 'Church Hill' } as RollRow
const review = (language: 'en' | 'es', unit: 'in' | 'mm') =>
  ({ day: '2026-03-03', network: { language, unit } }) as unknown as DayReview
const aside = { verdict: 'set aside', amended: null } as const

/** Runs of blanks are the table's matter. */
const plain = (text: string) => text.replace(/ +/g, ' ').replace(/ \n/g, '\n')

describe('printWhatIf', () => {
  it('tells map, areas that change, readings and docket, now and then', () => {
    const text = plain(printWhatIf({ told, review: review('en', 'mm'), row, decision: aside }))
    expect(text).toContain('A7C12 Church Hill, 2026-03-03: if set aside. Nothing was decided.')
    expect(text).toContain('The map would move by 0.25 mm on average.')
    expect(text).toContain('Upper Dale 12.3 11.3')
    expect(text).not.toContain('Lower Dale')
    expect(text).toContain(
      'B2X41 Mill Lane 18.3 31 % >99 % decimal point slipped 60 % → total over several days <1 % leaves the docket',
    )
    expect(text).toContain('and 2 more')
    expect(text).toContain('To decide: 4 now, 2 then.')
  })

  it('says the same in Spanish, with decimal commas', () => {
    const text = plain(printWhatIf({ told, review: review('es', 'mm'), row, decision: aside }))
    expect(text).toContain('si se aparta. No se decidió nada.')
    expect(text).toContain('El mapa se movería 0,25 mm en promedio.')
    expect(text).toContain('Upper Dale 12,3 11,3')
    expect(text).toContain('coma decimal corrida 60 % → total de varios días <1 % deja de estar por decidir')
    expect(text).toContain('Por decidir: 4 ahora, 2 después.')
  })

  it('names an amended amount and its days where they are others, in the network’s unit', () => {
    const amended = { amountUm: 25_400, isTrace: false, firstDay: '2026-03-01', lastDay: '2026-03-03' }
    const text = printWhatIf({ told, review: review('en', 'in'), row, decision: { verdict: 'amended', amended } })
    expect(text).toContain('if amended → 1.00 in, 2026-03-01 – 2026-03-03.')
    expect(text).toContain('0.010 in on average')
  })

  it('asking changes nothing; a map that stays is said to stay', () => {
    const asked = printWhatIf({ told, review: review('en', 'mm'), row, decision: { verdict: 'asked', amended: null } })
    expect(asked).toContain('Asking changes nothing')
    expect(asked).not.toContain('Upper Dale')
    const still = { ...told, meanAbsoluteChangeMm: 0, findings: [], findingCount: 0 }
    const text = printWhatIf({
      told: still,
      review: review('en', 'mm'),
      row,
      decision: { verdict: 'stands', amended: null },
    })
    expect(text).toContain('The map would not change.')
    expect(text).toContain('Nothing else would be found')
  })
})
