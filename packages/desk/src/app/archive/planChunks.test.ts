import { describe, expect, it } from 'vitest'
import { planChunks } from './planChunks.ts'

const ask = { fromDay: 100, toDay: 299, sameMorning: false, daysBefore: 0, threads: 2 }

describe('planChunks', () => {
  it('covers every day once, in order, whatever the length', () => {
    for (const sameMorning of [false, true]) {
      for (const dayCount of [1, 7, 30, 200, 4000]) {
        const chunks = planChunks({ ...ask, sameMorning, toDay: 99 + dayCount })
        const days = chunks.flatMap((chunk) =>
          Array.from({ length: chunk.toDay - chunk.fromDay + 1 }, (_, index) => chunk.fromDay + index),
        )
        expect(days).toEqual(Array.from({ length: dayCount }, (_, index) => 100 + index))
      }
    }
  })

  it('has work for both threads', () => {
    for (const dayCount of [30, 200, 4000]) expect(planChunks({ ...ask, toDay: 99 + dayCount }).length % 2).toBe(0)
  })

  it('looks at nothing later than the day: without a long history a stretch learns from the days before it', () => {
    for (const { fromDay, learnBefore } of planChunks({ ...ask, sameMorning: true, toDay: 4000 })) {
      expect(learnBefore).toBeLessThanOrEqual(fromDay)
    }
    const yearly = planChunks({ ...ask, sameMorning: true, daysBefore: 2000, toDay: ask.fromDay + 999 })
    expect(yearly.every((c) => c.learnBefore !== null && c.fromDay - c.learnBefore < 365)).toBe(true)
    expect(planChunks({ ...ask, daysBefore: 0 }).every((c) => c.learnBefore === null)).toBe(true)
  })

  it('learns ten years of mornings some thirty times, not thousands', () => {
    const chunks = planChunks({ ...ask, sameMorning: true, toDay: 99 + 3650 })
    expect(new Set(chunks.map((chunk) => chunk.learnBefore)).size).toBeLessThan(30)
  })
})
