/** What of docs/accuracy.md is written by the bench, by the names of its markers. */
import type { SetResult } from '../accuracy/runSet.ts'
import { calibrationTable } from './calibrationTable.ts'
import { doubtsTables, reasonsTable } from './doubtsTable.ts'
import { figuresTable } from './figuresTable.ts'
import { looksTable } from './looksTable.ts'
import { residualsTable } from './residualsTable.ts'

export function accuracyParts(results: readonly SetResult[]): Record<string, string> {
  return {
    figures: figuresTable(results),
    calibration: calibrationTable(results),
    residuals: residualsTable(results),
    looks: looksTable(results),
    reasons: reasonsTable(results),
    doubts: doubtsTables(results),
  }
}
