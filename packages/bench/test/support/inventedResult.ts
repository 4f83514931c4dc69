/** Results of an invented network, by the same scoring as the real ones: for the tests of figures and tables. */
import { emptyDailyTable, type GaugeSet, type Mistake, mistakes, seededRandom } from '@gaugewright/science'
import type { SetResult } from '../../src/accuracy/runSet.ts'
import type { InjectedSet } from '../../src/data/loadInjected.ts'
import type { TruthRow } from '../../src/data/truth.ts'
import { describeDoubts } from '../../src/doubts/describeDoubts.ts'
import { looksOfGood } from '../../src/doubts/looksOfGood.ts'
import { expectationShape } from '../../src/score/expectationShape.ts'
import { scoreExpectations } from '../../src/score/scoreExpectations.ts'
import { type FindingArrays, scoreFindings } from '../../src/score/scoreFindings.ts'

const levelCount = 20
const firstDay = 15_000

/** @param name  one of the networks' names, so that it has a title and a place in the order */
export function inventedResult(name: 'trentino' | 'parana', gaugeCount: number, dayCount: number): SetResult {
  const random = seededRandom(gaugeCount)
  const set = inventedSet(name, gaugeCount, dayCount, random)
  const days = { fromDay: firstDay, toDay: firstDay + dayCount - 1 }
  const check = (label: string, sharpness: number) => {
    const findings = inventedFindings(set, sharpness, random)
    const halves = { first: scoreFindings(findings, { ...set, ...days }) }
    const looks = { first: looksOfGood(set, findings, days) }
    return { name: label, source: 'invented', seconds: 1, halves, doubts: describeDoubts(set, halves), looks }
  }
  const expectations = inventedExpectations(set, random)
  const scores = scoreExpectations(expectations, set.clean)
  return {
    set: name,
    network: { gauges: set.gaugeRows, unit: 'mm', days: { first: { from: '2011-01-26', to: '2011-03-06' } } },
    halves: ['first'],
    published: [check('neighbour & ratio', 0.5), check('a worse one', 0.2)],
    kriging: [],
    ours: {
      dayAfter: check('ours', 1),
      sameMorning: check('ours, same morning', 0.8),
      expectation: {
        scores,
        krigingCrpsMm: 1.25 * scores.crpsMm,
        ratio: 0.8,
        shape: expectationShape(expectations, set.clean, 0.1, random),
      },
    },
    skipped: [],
  }
}

function inventedSet(
  name: 'trentino' | 'parana',
  gaugeCount: number,
  dayCount: number,
  random: () => number,
): InjectedSet {
  const clean = emptyDailyTable(gaugeCount, firstDay, dayCount)
  const injected = emptyDailyTable(gaugeCount, firstDay, dayCount)
  const truth: TruthRow[] = []
  for (let cell = 0; cell < clean.amountMm.length; cell++) {
    const trueMm = random() < 0.5 ? 0 : Math.round(-80 * Math.log(random())) / 10
    clean.amountMm[cell] = trueMm
    injected.amountMm[cell] = trueMm
    clean.spanDays[cell] = 1
    injected.spanDays[cell] = 1
    if (!(trueMm > 1 && random() < 0.06)) continue
    const mistake: Mistake = mistakes[Math.floor(random() * mistakes.length)]!
    injected.amountMm[cell] = trueMm * 10
    truth.push({
      event: cell,
      kind: `put in as ${mistake}`,
      role: 'value',
      gauge: cell % gaugeCount,
      day: firstDay + Math.floor(cell / gaugeCount),
      trueMm,
      reportedMm: trueMm * 10,
      scored: true,
      mistake,
    })
  }
  const gaugeRows = Array.from({ length: gaugeCount }, (_, g) => ({
    id: `G${g}`,
    latDeg: 41 + random() * 4,
    lonDeg: -7 + random() * 6,
    elevationM: null,
  }))
  const gauges: GaugeSet = {
    ids: gaugeRows.map((row) => row.id),
    xM: Float64Array.from(gaugeRows, (row) => row.lonDeg * 81_000),
    yM: Float64Array.from(gaugeRows, (row) => row.latDeg * 111_000),
    elevationM: new Float64Array(gaugeCount).fill(Number.NaN),
  }
  return { name, gaugeRows, gauges, unit: 'mm', injected, clean, history: null, truth }
}

/** The sharper, the farther the odds of wrong readings lie from those of good ones. */
function inventedFindings(set: InjectedSet, sharpness: number, random: () => number): FindingArrays {
  const n = set.gaugeRows.length
  const cells = Array.from(set.injected.amountMm.keys())
  const mistakeOf = new Map(set.truth.map((row) => [(row.day - firstDay) * n + row.gauge, row.mistake]))
  const day = Int32Array.from(cells, (cell) => firstDay + Math.floor(cell / n))
  return {
    gauge: Int32Array.from(cells, (cell) => cell % n),
    day,
    pStands: Float64Array.from(cells, (cell) => {
      const logOdds = (mistakeOf.has(cell) ? -4 : 4) * sharpness + 3 * (random() + random() + random() - 1.5)
      return 1 / (1 + Math.exp(-logOdds))
    }),
    mistake: Uint8Array.from(cells, (cell) => mistakes.indexOf(mistakeOf.get(cell) ?? 'decimal')),
    proposedMm: Float64Array.from(cells, (cell) => set.clean.amountMm[cell]!),
    proposedFirstDay: day,
    proposedLastDay: day,
  }
}

function inventedExpectations(set: InjectedSet, random: () => number) {
  const n = set.gaugeRows.length
  const count = set.clean.amountMm.length
  const quantilesMm = new Float32Array(count * levelCount)
  for (let i = 0; i < count; i++)
    for (let k = 0; k < levelCount; k++) {
      const level = (k + 0.5) / levelCount
      quantilesMm[i * levelCount + k] = level <= 0.3 ? 0 : -8 * Math.log((1 - level) / 0.7)
    }
  return {
    gauge: Int32Array.from({ length: count }, (_, i) => i % n),
    day: Int32Array.from({ length: count }, (_, i) => firstDay + Math.floor(i / n)),
    levelCount,
    quantilesMm,
    dryChance: Float64Array.from({ length: count }, () => 0.2 + 0.2 * random()),
  }
}
