import { describe, expect, it } from 'vitest'
import { changed, rainyNetwork, rowsOf } from '../../test/support/rainyNetwork.ts'
import { learnModel } from '../model/learnModel.ts'
import { seededRandom } from '../stats/seededRandom.ts'
import { findHabits } from './findHabits.ts'
import type { Habit, HabitKind } from './habit.ts'

const n = 40
const { gauges, table } = rainyNetwork(23, n, 420)
const reported = (row: number, g: number): number => table.amountMm[row * n + g] ?? 0
const random = seededRandom(12)
const tenths = (mm: number): number => Math.round(10 * mm) / 10

/** What each observer with a habit writes down; the others write what fell. */
const habitOf: Record<number, [kind: HabitKind, writes: (mm: number, row: number) => number]> = {
  3: ['dated', (_, row) => reported(row - 1, 3)],
  7: ['fives', (mm) => (random() < 0.4 ? Math.round(mm * 2) / 2 : mm)],
  11: ['tens', (mm) => (mm > 1 && random() < 0.5 ? Math.round(mm) : mm)],
  13: ['coarse', (mm) => Math.round(mm)],
  17: ['few-light', (mm) => (mm < 1.27 && random() < 0.8 ? 0 : mm)],
  // Not read on two of seven days, the third holds the total.
  19: [
    'carried',
    (mm, row) => (row % 7 < 2 ? 0 : row % 7 === 2 ? tenths(mm + reported(row - 1, 19) + reported(row - 2, 19)) : mm),
  ],
  23: ['mistaken', (mm) => (mm > 0.5 && random() < 0.15 ? tenths(10 * mm) : mm)],
  29: ['fits-poorly', (mm) => (random() < 0.35 ? reported(Math.floor(420 * random()), 29) : mm)],
}
const record = changed(table, (mm, g, day) => habitOf[g]?.[1](mm, day - table.firstDay) ?? mm)
const model = learnModel(gauges, record)
const found = findHabits(gauges, record, model)
const told = (g: number): Habit[] => found.gauges[g]!.habits.filter(({ isHabit }) => isHabit)
const of = (g: number, kind: HabitKind): Habit => found.gauges[g]!.habits.find((habit) => habit.kind === kind)!

describe('findHabits', () => {
  it.each(Object.entries(habitOf).map(([g, [kind]]) => [Number(g), kind] as const))('gauge %i: tells %s', (g, kind) => {
    expect(told(g).map((habit) => habit.kind)).toContain(kind)
  })

  it('does not take who rounds to fives for one who rounds to tens, nor the reverse', () => {
    expect(told(7).map(({ kind }) => kind)).not.toContain('tens')
    expect(told(11).map(({ kind }) => kind)).not.toContain('fives')
  })

  it('tells hardly anything of gauges without a habit', () => {
    const others = Array.from({ length: n }, (_, g) => g).filter((g) => habitOf[g] === undefined)
    const falsely = others.flatMap((g) => told(g).map(({ kind }) => `${g} ${kind}`))
    expect(falsely.length, falsely.join(', ')).toBeLessThanOrEqual(2)
  })

  it('measures the habit: a day late is -1 day, four in ten rounded is 0.4, one light amount in five is 0.2', () => {
    expect(of(3, 'dated').value).toBeLessThan(-0.85)
    expect(Math.abs(of(7, 'fives').value - 0.4)).toBeLessThan(0.15)
    expect(Math.abs(of(11, 'tens').value - 0.5)).toBeLessThan(0.15)
    expect(of(13, 'coarse').value).toBe(1)
    expect(of(17, 'few-light').value).toBeLessThan(0.5)
    expect(of(23, 'mistaken').value).toBeGreaterThan(1.5)
    expect(of(29, 'fits-poorly').value).toBeLessThan(of(29, 'fits-poorly').usual)
  })

  it('every figure lies within its interval, every chance within 0 and 1, the strongest habit first', () => {
    for (const { habits, readings } of found.gauges) {
      expect(readings).toBe(420)
      habits.forEach((habit, k) => {
        expect(habit.low).toBeLessThanOrEqual(habit.value + 1e-9)
        expect(habit.high).toBeGreaterThanOrEqual(habit.value - 1e-9)
        expect(habit.sure >= 0 && habit.sure <= 1).toBe(true)
        expect(habit.strength).toBeLessThanOrEqual(habits[Math.max(0, k - 1)]!.strength)
        expect(habit.readings).toBeGreaterThan(0)
      })
    }
  })

  it('the plots hold what was counted: agreement peaks a day off, the totals end on one weekday, digits add up', () => {
    const best = [...found.gauges[3]!.agreement].sort((a, b) => b.value - a.value)[0]
    expect(best?.lagDays).toBe(-1)
    const byWeekday = found.gauges[19]!.carriedByWeekday!
    const [most = 0, second = 0] = [...byWeekday].sort((a, b) => b - a)
    expect(most).toBeGreaterThan(2 * second)
    // Row 2 of the record: 2025-05-03, a Saturday.
    expect(byWeekday.indexOf(most)).toBe(5)
    const { counts, expected } = found.gauges[11]!.lastDigits
    const sum = (values: number[]): number => values.reduce((a, b) => a + b, 0)
    expect(sum(expected)).toBeCloseTo(sum(counts), 6)
    expect(counts[0]).toBeGreaterThan(2 * expected[0]!)
  })

  it('is the same whatever the order of the gauges', () => {
    const order = Array.from({ length: n }, (_, g) => (g * 7) % n)
    const moved = {
      ids: order.map((g) => gauges.ids[g]!),
      xM: Float64Array.from(order, (g) => gauges.xM[g]!),
      yM: Float64Array.from(order, (g) => gauges.yM[g]!),
      elevationM: Float64Array.from(order, (g) => gauges.elevationM[g]!),
    }
    const shuffled = changed(record, (_, g, day) => record.amountMm[(day - record.firstDay) * n + order[g]!]!)
    const again = findHabits(moved, shuffled, learnModel(moved, shuffled))
    order.forEach((g, k) => {
      const [mine, theirs] = [found.gauges[g]!, again.gauges[k]!]
      for (const habit of mine.habits) {
        const other = theirs.habits.find(({ kind }) => kind === habit.kind)!
        expect(Math.abs(other.value - habit.value)).toBeLessThan(0.1 + 0.1 * Math.abs(habit.value))
      }
    })
  })

  it('says nothing of what it cannot tell: a short record has no dates, no rates and no rounding', () => {
    const short = rowsOf(record, 0, 30)
    const { gauges: byGauge, judgedDays } = findHabits(gauges, short, learnModel(gauges, short))
    expect(judgedDays).toBe(0)
    for (const { habits, carriedByWeekday } of byGauge) {
      expect(habits.filter(({ isHabit }) => isHabit)).toEqual([])
      expect(carriedByWeekday).toBeNull()
    }
  })

  it('readings that a person found mistaken count, though they stand corrected in the record', () => {
    const decided = {
      mistaken: Float64Array.from({ length: n }, (_, g) => (g === 5 ? 30 : 0)),
      standing: new Float64Array(n),
      passed: new Float64Array(n).fill(400),
      named: {},
    }
    const mistakenOf = (result: typeof found) =>
      result.gauges[5]!.habits.find(({ kind }) => kind === 'mistaken')?.value ?? 0
    expect(mistakenOf(findHabits(gauges, record, model, decided))).toBeGreaterThan(2 * mistakenOf(found))
  })
})
