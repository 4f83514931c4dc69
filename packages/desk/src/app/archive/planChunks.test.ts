import { describe, expect, it } from 'vitest'
import { planChunks } from './planChunks.ts'

const ask = { fromDay: 100, toDay: 299, sameMorning: false, daysBefore: 0, threads: 2 }

describe('planChunks', () => {
  it('covers every day once, in order, with work for every thread', () => {
    for (const dayCount of [1, 7, 30, 200, 4000]) {
      const chunks = planChunks({ ...ask, toDay: 99 + dayCount })
      const days = chunks.flatMap((chunk) =>
        Array.from({ length: chunk.toDay - chunk.fromDay + 1 }, (_, index) => chunk.fromDay + index),
      )
      expect(days).toEqual(Array.from({ length: dayCount }, (_, index) => 100 + index))
      if (dayCount >= 30) expect(chunks.length % 2).toBe(0)
    }
  })

  it('looks at nothing later than the day: without a long history each stretch learns from the days before it', () => {
    expect(planChunks({ ...ask, sameMorning: true }).every((chunk) => chunk.model === 'own')).toBe(true)
    expect(planChunks({ ...ask, sameMorning: true, daysBefore: 2000 }).every((chunk) => chunk.model === 'once')).toBe(
      true,
    )
    expect(planChunks({ ...ask, daysBefore: 0 }).every((chunk) => chunk.model === 'once')).toBe(true)
  })
})
