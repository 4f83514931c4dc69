/** The check at entry without a signal: the same science, with what is usual at the own gauge. */
import type { OwnClimate, WireEntryQuestion } from '@gaugewright/contract'
import { checkAlone, type EntryTypedAt, type PocketClimate } from '@gaugewright/science'

export function checkOnPhone(own: OwnClimate | null, typed: EntryTypedAt): WireEntryQuestion | null {
  if (own === null) return null
  const question = checkAlone(pocketFrom(own), typed)
  return question === null ? null : { alternatives: [...question.alternatives] }
}

function pocketFrom(own: OwnClimate): PocketClimate {
  const { rounding } = own
  return {
    climate: {
      gaugeCount: 1,
      resolutionMm: Float64Array.of(own.resolutionMm),
      rounding: { ...rounding, share: Float64Array.from(rounding.share) },
      dryShare: Float64Array.from(own.dryShare),
      scaleMm: Float64Array.from(own.scaleMm),
      wetScore: Float64Array.from(own.wetScore),
    },
    mistakeRate: own.mistakeRate,
    tubeMm: own.tubeMm,
  }
}
