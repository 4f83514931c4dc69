import { describe, expect, it } from 'vitest'
import { suggestedAct } from './suggestedAct.ts'

const doubtful = {
  canTell: true,
  standsOdds: 0.1,
  likeliestMistake: 'decimal',
  likeliestMistakeOdds: 0.8,
  proposedMm: 15.2,
} as const

describe('suggestedAct', () => {
  it('amends where a named mistake is likelier than not', () => {
    expect(suggestedAct(doubtful, 0.75)).toBe('amend')
    expect(suggestedAct({ ...doubtful, likeliestMistakeOdds: 0.5 }, 0.75)).toBe('amend')
  })

  it('asks the observer where no mistake is likelier than not', () => {
    expect(suggestedAct({ ...doubtful, likeliestMistakeOdds: 0.49 }, 0.75)).toBe('ask')
    expect(suggestedAct({ ...doubtful, standsOdds: 0.7, likeliestMistakeOdds: 0.2 }, 0.75)).toBe('ask')
  })

  it('asks where the likeliest explanation has no name, however likely', () => {
    expect(suggestedAct({ ...doubtful, likeliestMistake: 'other', likeliestMistakeOdds: 0.97 }, 0.75)).toBe('ask')
  })

  it('asks where there is nothing to amend to', () => {
    expect(suggestedAct({ ...doubtful, proposedMm: Number.NaN }, 0.75)).toBe('ask')
  })

  it('lets stand what is not in doubt, and what cannot be judged', () => {
    expect(suggestedAct({ ...doubtful, standsOdds: 0.75, likeliestMistakeOdds: 0.2 }, 0.75)).toBe('stands')
    expect(suggestedAct({ ...doubtful, canTell: false }, 0.75)).toBe('stands')
  })
})
