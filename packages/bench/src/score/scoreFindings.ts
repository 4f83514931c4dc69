/**
 * Findings against labelled mistakes: how many are found, whether the named mistake is the right one, whether the
 * proposed amount is, and whether the odds mean what they say. Definitions in README.md of this package.
 */
import { type DailyTable, type Mistake, mistakes } from '@gaugewright/science'
import type { TruthRow } from '../data/truth.ts'
import { type CalibrationBin, calibrationBins } from './calibrationBins.ts'
import { type PrecisionRecallCurve, precisionRecallCurve } from './precisionRecallCurve.ts'
import { averagePrecision, limitAtFalseAlarms, recallAbove } from './rankedScores.ts'
import { type ReliabilityBin, reliabilityBins } from './reliabilityBins.ts'

/** One entry per judged reading, in any order; at most one for a gauge-day. */
export interface FindingArrays {
  gauge: Int32Array
  day: Int32Array
  pStands: Float64Array
  /** Index into `mistakes`; 255 where none is named (as by the published checks). */
  mistake: Uint8Array
  /** NaN where nothing is proposed. */
  proposedMm: Float64Array
  proposedFirstDay: Int32Array
  proposedLastDay: Int32Array
}

export interface KindScore {
  kind: string
  role: string
  mistake: Mistake
  count: number
  found: number
  namedRight: number
  amountRight: number
  /** Found, by what it was called instead (our names). */
  calledInstead: Record<string, number>
}

export interface StrongGoodDay {
  gauge: number
  day: number
  reportedMm: number
  pStands: number
  mistake: Mistake | null
  proposedMm: number
}

export interface FindingScores {
  goodCount: number
  wrongCount: number
  /** Readings of the block for which no finding was given; they count as standing for certain. */
  unjudgedCount: number
  area: number
  recallAt1: number
  /** p_stands below which a reading is found at 1 % false alarms. */
  limitPStands: number
  /** Of the mistakes found at 1 %: share whose likeliest mistake is the right one. */
  namedRightShare: number
  /** Of those: share whose proposed amount is within 20 % or 1 mm of the true sum over the proposed days. */
  amountRightShare: number
  /** The same, but with a proposal for one single day always compared with the truth of the day judged. */
  amountRightOwnDayShare: number
  kinds: KindScore[]
  calibration: CalibrationBin[]
  /** Odds of standing beside the share that are good, in fine bins; means nothing for published checks, as `calibration`. */
  reliability: ReliabilityBin[]
  curve: PrecisionRecallCurve
  strongestGood: StrongGoodDay[]
}

export interface ScoringCase {
  /** The table that was judged. */
  injected: DailyTable
  /** The true amounts: at least the same days. */
  clean: DailyTable
  truth: readonly TruthRow[]
  fromDay: number
  toDay: number
}

export function scoreFindings(findings: FindingArrays, against: ScoringCase): FindingScores {
  const { injected, clean, fromDay, toDay } = against
  const n = injected.gaugeCount
  const cellCount = (toDay - fromDay + 1) * n
  const findingOf = new Int32Array(cellCount).fill(-1)
  for (let i = 0; i < findings.gauge.length; i++) {
    const day = findings.day[i]!
    if (day >= fromDay && day <= toDay) findingOf[(day - fromDay) * n + findings.gauge[i]!] = i
  }
  const changed = new Uint8Array(cellCount)
  const wrongRows = against.truth.filter((row) => {
    if (row.day < fromDay || row.day > toDay) return false
    changed[(row.day - fromDay) * n + row.gauge] = 1
    return row.scored
  })

  const offset = (fromDay - injected.firstDay) * n
  // The odds themselves, negated: 1 - p would round the surest mistakes to one another.
  const suspicion = (cell: number): number => {
    const finding = findingOf[cell]!
    return finding < 0 ? -1 : -findings.pStands[finding]!
  }
  const goodCells: number[] = []
  let unjudgedCount = 0
  for (let cell = 0; cell < cellCount; cell++) {
    if (Number.isNaN(injected.amountMm[offset + cell]!)) continue
    if (findingOf[cell]! < 0) unjudgedCount++
    if (changed[cell] === 0) goodCells.push(cell)
  }
  const wrongCells = wrongRows.map((row) => (row.day - fromDay) * n + row.gauge)
  const good = Float64Array.from(goodCells, suspicion)
  const wrong = Float64Array.from(wrongCells, suspicion)
  const limit = limitAtFalseAlarms(good, 0.01)

  const kinds = new Map<string, KindScore>()
  let found = 0
  let named = 0
  let amountRight = 0
  let amountRightOwnDay = 0
  wrongRows.forEach((row, index) => {
    const kind = kindScore(kinds, row)
    kind.count++
    if (!(wrong[index]! > limit)) return
    found++
    kind.found++
    const finding = findingOf[wrongCells[index]!]!
    const called = mistakes[findings.mistake[finding]!] ?? 'none'
    if (called !== row.mistake) {
      kind.calledInstead[called] = (kind.calledInstead[called] ?? 0) + 1
      return
    }
    named++
    kind.namedRight++
    const firstDay = findings.proposedFirstDay[finding]!
    const lastDay = findings.proposedLastDay[finding]!
    const proposedMm = findings.proposedMm[finding]!
    if (isNear(proposedMm, trueSumMm(clean, row.gauge, firstDay, lastDay))) {
      amountRight++
      kind.amountRight++
    }
    const ownDayMm = firstDay === lastDay ? row.trueMm : trueSumMm(clean, row.gauge, firstDay, lastDay)
    if (isNear(proposedMm, ownDayMm)) amountRightOwnDay++
  })

  return {
    goodCount: good.length,
    wrongCount: wrong.length,
    unjudgedCount,
    area: averagePrecision(wrong, good),
    recallAt1: recallAbove(wrong, limit),
    limitPStands: -limit,
    namedRightShare: named / found,
    amountRightShare: amountRight / named,
    amountRightOwnDayShare: amountRightOwnDay / named,
    kinds: [...kinds.values()].sort((a, b) => a.kind.localeCompare(b.kind) || a.role.localeCompare(b.role)),
    calibration: calibrationBins(good, wrong),
    reliability: reliabilityBins({
      said: Float64Array.from([...good, ...wrong], (score) => -score),
      happened: Uint8Array.from({ length: good.length + wrong.length }, (_, i) => (i < good.length ? 1 : 0)),
      day: Int32Array.from([...goodCells, ...wrongCells], (cell) => Math.floor(cell / n)),
    }),
    curve: precisionRecallCurve(wrong, good),
    strongestGood: strongest(good, 20).map((index) => {
      const cell = goodCells[index]!
      const finding = findingOf[cell]!
      return {
        gauge: cell % n,
        day: fromDay + Math.floor(cell / n),
        reportedMm: injected.amountMm[offset + cell]!,
        pStands: -good[index]!,
        mistake: finding < 0 ? null : (mistakes[findings.mistake[finding]!] ?? null),
        proposedMm: finding < 0 ? Number.NaN : findings.proposedMm[finding]!,
      }
    }),
  }
}

/** The scores of a published check as findings that name nothing. @param scores one per cell of the table; NaN = cannot tell */
export function findingsFromScores(scores: Float64Array, table: DailyTable): FindingArrays {
  const cells: number[] = []
  for (let cell = 0; cell < scores.length; cell++) if (!Number.isNaN(scores[cell]!)) cells.push(cell)
  const day = Int32Array.from(cells, (cell) => table.firstDay + Math.floor(cell / table.gaugeCount))
  return {
    gauge: Int32Array.from(cells, (cell) => cell % table.gaugeCount),
    day,
    pStands: Float64Array.from(cells, (cell) => -scores[cell]!),
    mistake: new Uint8Array(cells.length).fill(255),
    proposedMm: new Float64Array(cells.length).fill(Number.NaN),
    proposedFirstDay: day,
    proposedLastDay: day,
  }
}

/** Within 20 % or 1 mm, whichever is more; never where either is not known. */
export function isNear(proposedMm: number, trueMm: number): boolean {
  return Math.abs(proposedMm - trueMm) <= Math.max(1, 0.2 * trueMm) + 1e-9
}

/** True sum over days; a day without a clean reading adds nothing, NaN when no day has one. */
function trueSumMm(clean: DailyTable, gauge: number, firstDay: number, lastDay: number): number {
  let sum = Number.NaN
  for (let day = firstDay; day <= lastDay; day++) {
    const row = day - clean.firstDay
    if (row < 0 || row >= clean.dayCount) continue
    const amountMm = clean.amountMm[row * clean.gaugeCount + gauge]!
    if (!Number.isNaN(amountMm)) sum = (Number.isNaN(sum) ? 0 : sum) + amountMm
  }
  return sum
}

function kindScore(kinds: Map<string, KindScore>, row: TruthRow): KindScore {
  const key = `${row.kind} ${row.role}`
  let score = kinds.get(key)
  if (score === undefined) {
    score = {
      kind: row.kind,
      role: row.role,
      mistake: row.mistake,
      count: 0,
      found: 0,
      namedRight: 0,
      amountRight: 0,
      calledInstead: {},
    }
    kinds.set(key, score)
  }
  return score
}

/** Indices of the highest scores, highest first. */
function strongest(scores: Float64Array, count: number): number[] {
  const limit = Float64Array.from(scores).sort()[Math.max(0, scores.length - count)] ?? 0
  const indices: number[] = []
  for (let i = 0; i < scores.length; i++) if (scores[i]! >= limit) indices.push(i)
  return indices.sort((a, b) => scores[b]! - scores[a]!).slice(0, count)
}
