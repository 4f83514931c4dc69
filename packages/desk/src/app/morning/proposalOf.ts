/** What is proposed in place of a reading, in whole steps of the network's unit. */
import {
  type Amount,
  type Finding,
  type IsoDay,
  isoFromEpochDay,
  roundUm,
  type Unit,
  umFromMm,
  usualResolutionUm,
} from '@gaugewright/science'

/** @returns null where nothing can be told */
export function proposalOf(finding: Finding, unit: Unit): (Amount & { firstDay: IsoDay; lastDay: IsoDay }) | null {
  if (!finding.canTell || !Number.isFinite(finding.proposedMm)) return null
  return {
    amountUm: roundUm(umFromMm(Math.max(0, finding.proposedMm)), usualResolutionUm(unit)),
    isTrace: false,
    firstDay: isoFromEpochDay(finding.proposedFirstDay),
    lastDay: isoFromEpochDay(finding.proposedLastDay),
  }
}
