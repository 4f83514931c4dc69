/** Learns a test network once from what lies before the middle of its block, judges that half, and keeps the cases to read. */
import { expectedSpansOf, isSnowSeason } from '@gaugewright/desk'
import {
  type DailyTable,
  type Evidence,
  evidenceAt,
  type Judgement,
  judge,
  learnModel,
  seededRandom,
  type Unit,
} from '@gaugewright/science'
import { daysOfHalf, type InjectedSet, sliceDays } from '../data/loadInjected.ts'
import type { TruthRow } from '../data/truth.ts'
import type { JudgedCase } from './judgedCase.ts'

/** Days judged at a time, and those looked at around them. */
const stretchDays = 60
const padding = { before: 12, after: 6 } as const
/** Readings below these odds of standing are all kept; of the others a share, enough to find right ones of every sort. */
const keptBelow = 0.9
const keptShare = 0.01
const shownNeighbours = 8

export function judgeFirstHalf(set: InjectedSet, onProgress: (words: string) => void): JudgedCase[] {
  const { fromDay, toDay } = daysOfHalf(set.injected, 'first')
  const table = withHistory(set, toDay)
  onProgress('learning')
  const model = learnModel(set.gauges, table)
  const random = seededRandom(1)
  const labels = new Map(set.truth.map((row) => [`${row.gauge} ${row.day}`, row]))
  const cases: JudgedCase[] = []
  for (let from = fromDay; from <= toDay; from += stretchDays) {
    onProgress(`judging, day ${from - fromDay} of ${toDay - fromDay + 1}`)
    const to = Math.min(toDay, from + stretchDays - 1)
    const firstDay = Math.max(table.firstDay, from - padding.before)
    const lastDay = Math.min(toDay, to + padding.after)
    const around = sliceDays(table, firstDay, lastDay - firstDay + 1)
    const judgement = judge(set.gauges, around, model, { fromDay: from, toDay: to, sameMorning: false })
    for (let index = 0; index < judgement.count; index++) {
      if (judgement.pStands[index]! >= keptBelow && random() >= keptShare) continue
      const evidence = evidenceAt(judgement, index)
      const label = labels.get(`${evidence.finding.gauge} ${evidence.finding.day}`) ?? null
      cases.push(caseOf(set, judgement, evidence, label))
    }
  }
  return cases
}

function withHistory(set: InjectedSet, toDay: number): DailyTable {
  const firstDay = set.history?.firstDay ?? set.injected.firstDay
  const table = sliceDays(set.injected, firstDay, toDay - firstDay + 1)
  if (set.history === null) return table
  const cells = set.history.amountMm.length
  table.amountMm.set(set.history.amountMm)
  table.spanDays.set(set.history.spanDays.subarray(0, cells))
  return table
}

function caseOf(set: InjectedSet, judgement: Judgement, evidence: Evidence, label: TruthRow | null): JudgedCase {
  const { finding } = evidence
  const row = set.gaugeRows[finding.gauge]!
  const typed = typedOf(finding.reportedMm, set.unit, label)
  return {
    gaugeId: row.id,
    gaugeName: row.id,
    unit: set.unit,
    ...typed,
    finding: typed.typedUnit === 'in' ? { ...finding, reportedMm: Number(typed.typedText) * 25.4 } : finding,
    explanations: [...evidence.explanations],
    expectedSpans: expectedSpansOf(judgement, evidence),
    isSnowSeason: isSnowSeason(row.latDeg, finding.day),
    daysAround: [...evidence.daysAround],
    tailChance: evidence.tailChance,
    neighbours: evidence.neighbours.slice(0, shownNeighbours).map(({ gauge, distanceM, day, amountMm, weight }) => ({
      gaugeId: set.gaugeRows[gauge]!.id,
      distanceKm: Math.round(distanceM / 100) / 10,
      day,
      amountMm: Number.isNaN(amountMm) ? null : amountMm,
      weight: Math.round(weight * 100) / 100,
    })),
    label: label === null ? null : `${label.kind} ${label.role}, truly ${label.trueMm} mm`,
  }
}

const slips: Readonly<Record<string, number>> = { slip_x10: 10, slip_x100: 100, slip_div10: 0.1, slip_div100: 0.01 }

/**
 * Hundredths of an inch come back from millimetres that were rounded to two decimals. A point that was made to slip in
 * the millimetres of the file is taken to have slipped in the inches that the observer read.
 */
function typedOf(amountMm: number, unit: Unit, label: TruthRow | null): { typedText: string; typedUnit: Unit } {
  const factor = slips[label?.kind ?? ''] ?? 1
  const inches = (Math.round(amountMm / factor / 0.254) * factor) / 100
  if (unit === 'in' && Math.abs(amountMm - inches * 25.4) <= 0.0051 * Math.max(1, factor))
    return { typedText: factor < 1 ? String(Number(inches.toFixed(4))) : inches.toFixed(2), typedUnit: 'in' }
  return { typedText: String(Math.round(amountMm * 1000) / 1000), typedUnit: 'mm' }
}
