/** All figures of one test network. */
import { publishedBaselines } from '../baselines/publishedBaselines.ts'
import { crpsOfRootPrediction, predictByRootKriging, rootKrigingTails } from '../baselines/rootKriging.ts'
import { daysOfHalf, type InjectedSet } from '../data/loadInjected.ts'
import { checkByCommand } from '../ours/checkByCommand.ts'
import { expectByCommand } from '../ours/expectByCommand.ts'
import { type ExpectationScores, scoreExpectations } from '../score/scoreExpectations.ts'
import { type FindingArrays, type FindingScores, findingsFromScores, scoreFindings } from '../score/scoreFindings.ts'

export type Half = 'first' | 'second' | 'all'

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

export interface OurExpectation {
  scores: ExpectationScores
  /** Kriging (the better variogram on the training half) on exactly the same gauge-days. */
  krigingCrpsMm: number
  ratio: number
}

export interface SetResult {
  set: string
  halves: Half[]
  published: CheckResult[]
  kriging: KrigingResult[]
  ours: { dayAfter: CheckResult | null; sameMorning: CheckResult | null; expectation: OurExpectation | null }
  /** What could not be run, in words. */
  skipped: string[]
}

export interface RunSetAsk {
  dataFolder: string
  workFolder: string
  halves: Half[]
  /** Which parts of ours to run by the command. */
  parts: readonly ('day-after' | 'same-morning' | 'expect')[]
  onProgress: (words: string) => void
}

export async function runSet(set: InjectedSet, ask: RunSetAsk): Promise<SetResult> {
  const result: SetResult = {
    set: set.name,
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
    if (sameMorning) result.ours.sameMorning = scored
    else result.ours.dayAfter = scored
  }
  return result
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

function compareExpectation(
  set: InjectedSet,
  all: Parameters<typeof scoreExpectations>[0],
  krigingCrpsMm: Float64Array,
  half: Half,
): OurExpectation {
  const { fromDay, toDay } = daysOfHalf(set.clean, half)
  const cellOf = (i: number): number => (all.day[i]! - set.clean.firstDay) * set.clean.gaugeCount + all.gauge[i]!
  // Gauge-days that kriging cannot do are left out on both sides.
  const kept = Array.from(all.gauge.keys()).filter(
    (i) => all.day[i]! >= fromDay && all.day[i]! <= toDay && !Number.isNaN(krigingCrpsMm[cellOf(i)]!),
  )
  const quantilesMm = new Float32Array(kept.length * all.levelCount)
  kept.forEach((i, place) => {
    quantilesMm.set(all.quantilesMm.subarray(i * all.levelCount, (i + 1) * all.levelCount), place * all.levelCount)
  })
  const scores = scoreExpectations(
    {
      gauge: Int32Array.from(kept, (i) => all.gauge[i]!),
      day: Int32Array.from(kept, (i) => all.day[i]!),
      levelCount: all.levelCount,
      quantilesMm,
    },
    set.clean,
  )
  let sum = 0
  let count = 0
  kept.forEach((i, place) => {
    if (Number.isNaN(scores.crpsEachMm[place]!)) return
    sum += krigingCrpsMm[cellOf(i)]!
    count++
  })
  return { scores, krigingCrpsMm: sum / count, ratio: scores.crpsMm / (sum / count) }
}
