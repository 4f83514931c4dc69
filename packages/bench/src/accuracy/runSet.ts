/** All figures of one test network. */
import { publishedBaselines } from '../baselines/publishedBaselines.ts'
import { crpsOfRootPrediction, predictByRootKriging, rootKrigingTails } from '../baselines/rootKriging.ts'
import { daysOfHalf, type GaugeRow, type InjectedSet } from '../data/loadInjected.ts'
import { isoFromDay } from '../data/parseWideCsv.ts'
import { type Doubt, describeDoubts } from '../doubts/describeDoubts.ts'
import { type LooksBin, looksOfGood } from '../doubts/looksOfGood.ts'
import { checkByCommand } from '../ours/checkByCommand.ts'
import { expectByCommand } from '../ours/expectByCommand.ts'
import { type FindingArrays, type FindingScores, findingsFromScores, scoreFindings } from '../score/scoreFindings.ts'
import { type RuleScore, scoreRule } from '../score/scoreRule.ts'
import { compareExpectation, type OurExpectation } from './compareExpectation.ts'

export type Half = 'first' | 'second' | 'all'

/** Which runs of our own command there are. */
export const ourParts = ['day-after', 'same-morning', 'expect'] as const

export interface CheckResult {
  name: string
  source: string
  seconds: number
  halves: Partial<Record<Half, FindingScores>>
}

export interface KrigingResult {
  kind: string
  nuggetShare: number
  lengthKm: number
  factor: number
  /** Mean CRPS in mm over the readings of the half that have a prediction, and how many they are. */
  halves: Partial<Record<Half, { crpsMm: number; count: number }>>
}

/** What plots and tables need to know of the network, so that they can be made without its files. */
export interface NetworkFacts {
  gauges: Pick<GaugeRow, 'id' | 'latDeg' | 'lonDeg'>[]
  unit: 'mm' | 'in'
  days: Partial<Record<Half, { from: string; to: string }>>
}

export interface OurCheck extends CheckResult {
  /** The strongest doubts about readings that nobody changed, with what lies around them. */
  doubts: Partial<Record<Half, Doubt[]>>
  /** How good readings look by their surroundings, by their odds. */
  looks: Partial<Record<Half, LooksBin[]>>
  /** What a rule would let through, at several thresholds; not in files from before it was measured. */
  rule?: Partial<Record<Half, RuleScore[]>>
}

export interface SetResult {
  set: string
  network: NetworkFacts
  halves: Half[]
  published: CheckResult[]
  kriging: KrigingResult[]
  ours: { dayAfter: OurCheck | null; sameMorning: OurCheck | null; expectation: OurExpectation | null }
  /** What could not be run, in words. */
  skipped: string[]
}

export interface RunSetAsk {
  dataFolder: string
  workFolder: string
  halves: Half[]
  /** Which parts of ours to run by the command. */
  parts: readonly (typeof ourParts)[number][]
  onProgress: (words: string) => void
}

export async function runSet(set: InjectedSet, ask: RunSetAsk): Promise<SetResult> {
  const result: SetResult = {
    set: set.name,
    network: factsOf(set, ask.halves),
    halves: ask.halves,
    published: [],
    kriging: [],
    ours: { dayAfter: null, sameMorning: null, expectation: null },
    skipped: [],
  }
  const scoreAll = (name: string, source: string, findings: FindingArrays, seconds: number): CheckResult => ({
    name,
    source,
    seconds,
    halves: Object.fromEntries(
      ask.halves.map((half) => [half, scoreFindings(findings, { ...set, ...daysOfHalf(set.injected, half) })]),
    ),
  })

  for (const baseline of [...publishedBaselines, rootKrigingTails]) {
    ask.onProgress(baseline.name)
    const started = performance.now()
    const scores = baseline.score({ gauges: set.gauges, table: set.injected, history: set.history })
    const seconds = (performance.now() - started) / 1000
    result.published.push(scoreAll(baseline.name, baseline.source, findingsFromScores(scores, set.injected), seconds))
  }

  ask.onProgress('kriging of roots')
  const krigingCrpsMm = krige(set, ask.halves, result)

  const widest = ask.halves.includes('all') || ask.halves.length > 1 ? 'all' : ask.halves[0]!
  const days = daysOfHalf(set.injected, widest)
  for (const part of ask.parts) {
    ask.onProgress(`gaugewright, ${part}`)
    if (part === 'expect') {
      const answer = await expectByCommand(set, { ...ask, ...daysOfHalf(set.clean, lastHalf(ask.halves)) })
      if (!answer.ok) result.skipped.push(`gaugewright expect: ${answer.why}`)
      else result.ours.expectation = compareExpectation(set, answer.value, krigingCrpsMm, lastHalf(ask.halves))
      continue
    }
    const sameMorning = part === 'same-morning'
    const answer = await checkByCommand(set, { ...ask, ...days, sameMorning })
    if (!answer.ok) {
      result.skipped.push(`gaugewright check, ${part}: ${answer.why}`)
      continue
    }
    const scored = scoreAll(`gaugewright, ${part.replace('-', ' ')}`, 'this project', answer.value, answer.seconds)
    const looks = ask.halves.map((half) => [half, looksOfGood(set, answer.value, daysOfHalf(set.injected, half))])
    const rule = ask.halves.map((half) => [
      half,
      scoreRule(answer.value, { ...set, ...daysOfHalf(set.injected, half) }),
    ])
    const ours = {
      ...scored,
      doubts: describeDoubts(set, scored.halves),
      looks: Object.fromEntries(looks),
      rule: Object.fromEntries(rule),
    }
    if (sameMorning) result.ours.sameMorning = ours
    else result.ours.dayAfter = ours
  }
  return result
}

function factsOf(set: InjectedSet, halves: readonly Half[]): NetworkFacts {
  const daysOf = (half: Half) => {
    const { fromDay, toDay } = daysOfHalf(set.injected, half)
    return { from: isoFromDay(fromDay), to: isoFromDay(toDay) }
  }
  return {
    gauges: set.gaugeRows.map(({ id, latDeg, lonDeg }) => ({ id, latDeg, lonDeg })),
    unit: set.unit,
    days: Object.fromEntries(halves.map((half) => [half, daysOf(half)])),
  }
}

/** The published check with the largest area on a half. */
export function bestPublished({ published }: SetResult, half: Half): CheckResult {
  return published.reduce((best, next) => (next.halves[half]!.area > best.halves[half]!.area ? next : best))
}

/** The half whose details are printed: the second where it is there. */
export function lastHalf(halves: readonly Half[]): Half {
  return halves.includes('second') ? 'second' : halves.at(-1)!
}

/** Fits both variograms on the clean first half; @returns CRPS per clean cell by the one that is better there. */
function krige(set: InjectedSet, halves: readonly Half[], result: SetResult): Float64Array {
  const training = daysOfHalf(set.clean, 'first')
  let best: { trainingCrpsMm: number; crpsEachMm: Float64Array } | null = null
  for (const kind of ['exponential', 'spherical'] as const) {
    const prediction = predictByRootKriging(set.gauges, set.clean, training, kind)
    const crpsEachMm = crpsOfRootPrediction(prediction, set.clean)
    const { nugget, partialSill, lengthM } = prediction.variogram
    const trainingCrpsMm = meanOfHalf(set, crpsEachMm, 'first').crpsMm
    if (best === null || trainingCrpsMm < best.trainingCrpsMm) best = { trainingCrpsMm, crpsEachMm }
    result.kriging.push({
      kind,
      nuggetShare: nugget / (nugget + partialSill),
      lengthKm: lengthM / 1000,
      factor: prediction.factor,
      halves: Object.fromEntries(halves.map((half) => [half, meanOfHalf(set, crpsEachMm, half)])),
    })
  }
  return best!.crpsEachMm
}

function meanOfHalf(set: InjectedSet, each: Float64Array, half: Half): { crpsMm: number; count: number } {
  const { fromDay, toDay } = daysOfHalf(set.clean, half)
  const n = set.clean.gaugeCount
  let sum = 0
  let count = 0
  for (let cell = (fromDay - set.clean.firstDay) * n; cell < (toDay + 1 - set.clean.firstDay) * n; cell++) {
    if (Number.isNaN(each[cell]!)) continue
    sum += each[cell]!
    count++
  }
  return { crpsMm: sum / count, count }
}
