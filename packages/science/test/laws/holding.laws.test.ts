/** Going quiet: exact against a sum done another way, against a published change, and on simulated observers. */
import { describe, expect, it } from 'vitest'
import { goingQuiet } from '../../src/holding/goingQuiet.ts'
import { countedOccasions } from '../../src/holding/occasions.ts'
import { type AnswerState, rollOverTime } from '../../src/holding/rollOverTime.ts'
import { seededRandom } from '../../src/stats/seededRandom.ts'

/** An observer who answers with a chance, and after a missed morning with another. */
function habit(random: () => number, days: number, after: [number, number]): number[] {
  const all: number[] = []
  for (let day = 0; day < days; day++) all.push(random() < after[all.at(-1) ?? 1]! ? 1 : 0)
  return all
}

describe('going quiet', () => {
  it('sums exactly: the same posterior by integrating the chances numerically', () => {
    const random = seededRandom(4)
    const past = habit(random, 80, [0.4, 0.92])
    const days = [...past, ...habit(random, 12, [0.2, 0.5])]
    const n = days.length
    const first = n - 20
    const got = goingQuiet(days, { windowDays: 20, hazard: 0.01 })
    const count = (from: number, to: number, previous: number, now: number) => {
      let sum = 0
      for (let day = Math.max(1, from); day < to; day++) if (days[day - 1] === previous && days[day] === now) sum++
      return sum
    }
    const usual = [
      (count(1, first, 0, 1) + 1) / (count(1, first, 0, 0) + count(1, first, 0, 1) + 3),
      (count(1, first, 1, 1) + 9) / (count(1, first, 1, 0) + count(1, first, 1, 1) + 10),
    ]
    const same = (from: number, to: number) => {
      let product = 1
      for (let day = from; day < to; day++)
        product *= days[day] === 1 ? usual[days[day - 1]!]! : 1 - usual[days[day - 1]!]!
      return product
    }
    /** ∫ p^r (1-p)^w dp by the midpoint rule. */
    const integral = (r: number, w: number) => {
      const steps = 20_000
      let sum = 0
      for (let k = 0; k < steps; k++) sum += ((k + 0.5) / steps) ** r * (1 - (k + 0.5) / steps) ** w
      return sum / steps
    }
    let all = same(first, n) * 0.99 ** 20
    let down = 0
    for (let day = first; day < n; day++) {
      const weight =
        0.01 *
        0.99 ** 19 *
        same(first, day) *
        integral(count(day, n, 1, 1), count(day, n, 1, 0)) *
        integral(count(day, n, 0, 1), count(day, n, 0, 0))
      all += weight
      const since = (0.5 + days.slice(day).filter((one) => one === 1).length) / (1 + n - day)
      const before = days.slice(0, day).filter((one) => one === 1).length / day
      if (since <= 0.75 * before) down += weight
    }
    expect(got.probability).toBeCloseTo(down / all, 4)
  })

  it('finds the fall of coal-mining disasters about 1890 [Carlin1992]: years with two or more, 1851 to 1961', () => {
    // Counts by year, from memory of the published series (Jarrett 1979).
    const counts = [
      4, 5, 4, 1, 0, 4, 3, 4, 0, 6, 3, 3, 4, 0, 2, 6, 3, 3, 5, 4, 5, 3, 1, 4, 4, 1, 5, 5, 3, 4, 2, 5, 2, 2, 3, 4, 2, 1,
      3, 2, 1, 1, 1, 1, 1, 3, 0, 0, 1, 0, 1, 1, 0, 0, 3, 1, 0, 3, 2, 2, 0, 1, 1, 1, 0, 1, 0, 1, 0, 0, 0, 2, 1, 0, 0, 0,
      1, 1, 0, 2, 2, 3, 1, 1, 2, 1, 1, 1, 1, 2, 3, 3, 0, 0, 0, 1, 4, 0, 0, 0, 1, 0, 0, 0, 0, 0, 1, 0, 0, 1, 0, 1,
    ]
    const got = goingQuiet(
      counts.map((one) => (one >= 2 ? 1 : 0)),
      { windowDays: 80 },
    )
    expect(got.probability).toBeGreaterThan(0.99)
    expect(1851 + got.changedAt!).toBeGreaterThanOrEqual(1886)
    expect(1851 + got.changedAt!).toBeLessThanOrEqual(1894)
  })

  const habits: { name: string; after: [number, number] }[] = [
    { name: 'every morning', after: [0.6, 0.985] },
    { name: 'most mornings', after: [0.45, 0.9] },
    { name: 'about half', after: [0.35, 0.65] },
  ]

  it.each(habits)('$name: seldom listed without cause, and soon when they stop', ({ after }) => {
    const random = seededRandom(17)
    let falseDays = 0
    let looked = 0
    let delay = 0
    const people = 60
    for (let person = 0; person < people; person++) {
      const days = habit(random, 400, after)
      for (let day = 200; day < 400; day += 7) {
        looked++
        if (goingQuiet(days.slice(0, day)).probability > 0.8) falseDays++
      }
      let silent = 0
      while (silent < 60 && goingQuiet([...days, ...Array(silent).fill(0)]).probability <= 0.8) silent++
      delay += silent
    }
    expect(falseDays / looked).toBeLessThan(0.02)
    expect(delay / people).toBeLessThan(after[1] > 0.95 ? 10 : after[1] > 0.8 ? 14 : 20)
  })

  it('is no fixed number of days: the regular are missed sooner than the irregular', () => {
    const delayOf = (after: [number, number]) => {
      const random = seededRandom(23)
      let sum = 0
      for (let person = 0; person < 30; person++) {
        const days = habit(random, 300, after)
        let silent = 0
        while (silent < 60 && goingQuiet([...days, ...Array(silent).fill(0)]).probability <= 0.8) silent++
        sum += silent
      }
      return sum / 30
    }
    expect(delayOf([0.6, 0.985]) + 3).toBeLessThan(delayOf([0.35, 0.65]))
  })

  it('who is back is not going: two silent weeks, then as before', () => {
    const random = seededRandom(31)
    const days = [...habit(random, 200, [0.6, 0.97]), ...Array(14).fill(0)]
    expect(goingQuiet(days).probability).toBeGreaterThan(0.9)
    expect(goingQuiet([...days, ...Array(9).fill(1)]).probability).toBe(0)
  })

  it('says nothing of somebody new', () => {
    expect(goingQuiet([1, 1, 0, 0, 0, 0])).toMatchObject({ probability: 0, changedAt: null })
    expect(goingQuiet([])).toMatchObject({ probability: 0 })
  })
})

describe('the roll over time', () => {
  it('a total answers its days, away days neither break a streak nor count', () => {
    const states: AnswerState[] = [
      'not expected',
      'answered',
      'answered',
      'away',
      'covered',
      'answered',
      'silent',
      'silent',
      'answered',
      'away',
    ]
    expect(rollOverTime(states)).toEqual({
      answeredShare: 5 / 7,
      expected: 7,
      answered: 5,
      currentStreak: 1,
      longestStreak: 4,
      gaps: [{ from: 6, days: 2 }],
    })
  })
})

describe('occasions', () => {
  it('the first reading, the hundredth, a year: each within a month of its day', () => {
    const readingDays = Array.from({ length: 100 }, (_, k) => 1000 + k)
    expect(countedOccasions({ readingDays: [1000], today: 1002 })).toEqual([
      { kind: 'first reading', key: 'first reading', day: 1000 },
    ])
    expect(countedOccasions({ readingDays, today: 1101 })).toEqual([
      { kind: 'readings', key: 'readings 100', day: 1099, count: 100 },
    ])
    expect(countedOccasions({ readingDays: [...readingDays, 1360], today: 1367 })).toMatchObject([
      { kind: 'years', years: 1, day: 1366 },
    ])
    expect(countedOccasions({ readingDays, today: 1300 })).toEqual([])
  })
})
