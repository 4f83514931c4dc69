/** Judges one stretch of days of an archive and writes its rows, one per reading, by day, then gauge. */
import {
  type DailyTable,
  findingAt,
  type GaugeSet,
  isoFromEpochDay,
  type Judgement,
  judge,
  type Model,
} from '@gaugewright/science'
import { csvField } from '../csvField.ts'
import { daysBetween } from './archiveTable.ts'
import type { ArchiveWork, ChunkResult } from './archiveWork.ts'
import { depth, odds } from './csvNumber.ts'
import type { Chunk } from './planChunks.ts'

export const checkHeader =
  'gauge,day,reported_mm,p_stands,mistake,p_mistake,proposed_mm,proposed_first_day,proposed_last_day,p_dry,p10_mm,p50_mm,p90_mm,neighbours\n'

/** Days looked at before and after a stretch, so that its first and last days are judged as those in its middle. */
const padding = { before: 12, after: 6 } as const

export function checkChunk(work: ArchiveWork, model: Model, chunk: Chunk): ChunkResult {
  const { gauges, sameMorning } = work
  const table = paddedDays(work, chunk)
  const judgement = judge(gauges, table, model, { fromDay: chunk.fromDay, toDay: chunk.toDay, sameMorning })
  const lines: string[] = []
  for (let index = 0; index < judgement.count; index++) lines.push(rowOf(gauges, judgement, index))
  return { text: lines.join(''), rows: lines.length }
}

/** The days of a stretch and those around it; none later than the stretch where each day is its own morning's. */
export function paddedDays(work: ArchiveWork, chunk: Chunk): DailyTable {
  const after = work.sameMorning ? 0 : padding.after
  return daysBetween(work.table, chunk.fromDay - padding.before, chunk.toDay + after)
}

function rowOf(gauges: GaugeSet, judgement: Judgement, index: number): string {
  const finding = findingAt(judgement, index)
  const { expectation } = finding
  return `${[
    csvField(gauges.ids[finding.gauge] ?? ''),
    isoFromEpochDay(finding.day),
    depth(finding.reportedMm),
    odds(finding.standsOdds),
    finding.likeliestMistake,
    odds(finding.likeliestMistakeOdds),
    depth(finding.proposedMm),
    isoFromEpochDay(finding.proposedFirstDay),
    isoFromEpochDay(finding.proposedLastDay),
    odds(expectation.dryChance),
    depth(expectation.quantilesMm[P10] ?? Number.NaN),
    depth(expectation.quantilesMm[P50] ?? Number.NaN),
    depth(expectation.quantilesMm[P90] ?? Number.NaN),
    finding.neighbourCount,
  ].join(',')}\n`
}

/** Places of the levels 0.1, 0.5 and 0.9 in `expectationLevels`. */
const P10 = 3
const P50 = 11
const P90 = 19
