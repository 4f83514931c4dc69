/**
 * Who is going quiet: a change-point on an observer's own habit. Mornings are answered (1) or not (0), each with a chance
 * that depends on whether the one before was (people who miss a morning often miss the next). The two chances are learned
 * from the observer's past; then every day of the recent window is tried as the day on which they changed, with the chances
 * after it unknown (beta, integrated exactly), and the posterior over all of these and over "no change" is summed exactly:
 * Barry and Hartigan's product partition with one partition point at most [Barry1993]. Only changes downwards count. No fixed
 * number of silent days is in it: who reads every morning is missed after few, who reads on weekends after many.
 */
import { logGamma } from '../stats/logGamma.ts'

export interface GoingQuiet {
  /** That the habit has changed downwards in the window, 0 to 1. */
  probability: number
  /** Place of the likeliest day of change, in the days given; null where too little is known. */
  changedAt: number | null
  /** Share answered before that day and since. */
  before: number
  since: number
}

export interface GoingQuietAsk {
  /** How many of the latest expected mornings may hold the change. Default 60. */
  windowDays?: number
  /** Chance of a lasting change on any morning. Default 1/500: about one in a year and a half. */
  hazard?: number
}

const LEAST_BEFORE = 30
/** A fall by less than a quarter is a habit of its own, not a going. */
const FALLS_TO = 0.75
/** Who answers as before in these latest mornings is back, whatever lay between. */
const BACK_MORNINGS = 7

/** @param answered  1 or 0 for each expected morning, oldest first; away mornings are left out */
export function goingQuiet(answered: ArrayLike<number>, ask: GoingQuietAsk = {}): GoingQuiet {
  const { windowDays = 60, hazard = 1 / 500 } = ask
  const n = answered.length
  const first = Math.max(LEAST_BEFORE, n - windowDays)
  const none = { probability: 0, changedAt: null, before: shareOf(answered, 0, n), since: shareOf(answered, 0, n) }
  if (n <= first) return none
  // What is usual for this observer, from the days before the window.
  const usual = chances(answered, first)
  let logSame = 0
  const logSameFrom = new Float64Array(n - first + 1)
  for (let day = n - 1; day >= first; day--) {
    logSame += Math.log(chanceOf(answered, day, usual))
    logSameFrom[day - first] = logSame
  }
  const logNo = logSameFrom[0]! + (n - first) * Math.log1p(-hazard)
  // counts[previous][now] from day to the end, built backwards.
  const counts = [0, 0, 0, 0]
  let logAll = logNo
  let logDown = Number.NEGATIVE_INFINITY
  let best = Number.NEGATIVE_INFINITY
  let changedAt: number | null = null
  for (let day = n - 1; day >= first; day--) {
    const previous = answered[day - 1] === 1 ? 1 : 0
    counts[previous * 2 + (answered[day] === 1 ? 1 : 0)]!++
    const logBefore = logSameFrom[0]! - logSameFrom[day - first]!
    const logAfter = logBeta(counts[3]!, counts[2]!) + logBeta(counts[1]!, counts[0]!)
    const log = Math.log(hazard) + (n - first - 1) * Math.log1p(-hazard) + logBefore + logAfter
    logAll = logAdd(logAll, log)
    const since = (0.5 + counts[1]! + counts[3]!) / (1 + n - day)
    if (since > FALLS_TO * shareOf(answered, 0, day)) continue
    logDown = logAdd(logDown, log)
    if (log > best) {
      best = log
      changedAt = day
    }
  }
  if (changedAt === null) return none
  const before = shareOf(answered, 0, changedAt)
  if (n - changedAt > BACK_MORNINGS && shareOf(answered, n - BACK_MORNINGS, n) > FALLS_TO * before) return none
  return {
    probability: Math.exp(logDown - logAll),
    changedAt,
    before,
    since: shareOf(answered, changedAt, n),
  }
}

/** Chances of answering after an answered and after a missed morning: [after 0, after 1], with a gentle prior. */
function chances(answered: ArrayLike<number>, until: number): [number, number] {
  const counts = [0, 0, 0, 0]
  for (let day = 1; day < until; day++) {
    counts[(answered[day - 1] === 1 ? 2 : 0) + (answered[day] === 1 ? 1 : 0)]!++
  }
  return [(counts[1]! + 1) / (counts[0]! + counts[1]! + 3), (counts[3]! + 9) / (counts[2]! + counts[3]! + 10)]
}

function chanceOf(answered: ArrayLike<number>, day: number, [afterMissed, afterAnswered]: [number, number]): number {
  const chance = answered[day - 1] === 1 ? afterAnswered : afterMissed
  return answered[day] === 1 ? chance : 1 - chance
}

/** Log of the marginal likelihood of `right` and `wrong` in a given order under an even prior: B(1 + right, 1 + wrong). */
function logBeta(right: number, wrong: number): number {
  return logGamma(1 + right) + logGamma(1 + wrong) - logGamma(2 + right + wrong)
}

function logAdd(a: number, b: number): number {
  const [high, low] = a > b ? [a, b] : [b, a]
  return low === Number.NEGATIVE_INFINITY ? high : high + Math.log1p(Math.exp(low - high))
}

function shareOf(answered: ArrayLike<number>, from: number, to: number): number {
  let sum = 0
  for (let day = from; day < to; day++) sum += answered[day] === 1 ? 1 : 0
  return to > from ? sum / (to - from) : 0
}
