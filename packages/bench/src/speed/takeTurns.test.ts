import { describe, expect, it } from 'vitest'
import { takeTurns } from './takeTurns.ts'

describe('takeTurns', () => {
  it('runs the programs by turns, and goes on without one that fails', async () => {
    const order: string[] = []
    const turns = await takeTurns(
      {
        steady: async (round) => {
          order.push(`steady ${round}`)
          return { search: { seconds: round + 1, cpuSeconds: null } }
        },
        frail: async (round) => {
          order.push(`frail ${round}`)
          if (round === 1) throw new Error('out of memory')
          return { solve: { seconds: 7, cpuSeconds: 6 } }
        },
      },
      3,
    )
    expect(order).toEqual(['steady 0', 'frail 0', 'steady 1', 'frail 1', 'steady 2'])
    expect(turns.timings.search?.map(({ seconds }) => seconds)).toEqual([1, 2, 3])
    expect(turns.timings.solve).toEqual([{ seconds: 7, cpuSeconds: 6 }])
    expect(turns.failures).toEqual({ frail: 'out of memory' })
  })
})
