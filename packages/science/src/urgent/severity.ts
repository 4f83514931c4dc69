/**
 * What a report would change for a warning: its level against the office's thresholds. Hail is severe from
 * 1.00 in on and significant from 2.00 in [NWSHail]; a gust is significant at 65/50 of the severe one, as 65 kt stands to
 * 50 kt (common practice); rain and snow at twice. Within a quarter of the threshold a report is near it. Smaller hail that
 * did damage counts as near. Water: anybody hurt, water in a building, from the waist up or fast is significant; rising water
 * or more than the street and the fields wet is severe.
 */
import type { SeverityThresholds, UrgentObservation } from './observation.ts'
import { againstGuidance } from './rainRate.ts'

export type SeverityLevel = 'significant' | 'severe' | 'near' | 'below'
export type SeverityBasis = 'stone size' | 'rain guidance' | 'gust' | 'snow rate' | 'water' | 'damage'

export interface Severity {
  level: SeverityLevel
  /** Of the severe threshold: 1 is at it. Null where nothing was measured. */
  ratio: number | null
  basis: SeverityBasis
  /** Duration of the guidance that the rain was held against, minutes. */
  guidanceMinutes: number | null
}

/** Levels from the least to the gravest. */
export const severityOrder: readonly SeverityLevel[] = ['below', 'near', 'severe', 'significant']
const nearShare = 0.75
/** Typed sizes are equal to a threshold up to the rounding of inches to mm. */
const rounding = 1 - 1e-3

export function weighSeverity(seen: UrgentObservation, thresholds: SeverityThresholds): Severity {
  const severity = bySize(seen, thresholds)
  const least = leastByDamage(seen)
  if (severityOrder.indexOf(least) <= severityOrder.indexOf(severity.level)) return severity
  return { ...severity, level: least, basis: 'damage' }
}

function bySize(seen: UrgentObservation, thresholds: SeverityThresholds): Severity {
  switch (seen.kind) {
    case 'hail': {
      const ratio = seen.largest.diameterMm / thresholds.severeHailMm
      const significantAt = thresholds.significantHailMm / thresholds.severeHailMm
      return { level: levelOf(ratio, significantAt), ratio, basis: 'stone size', guidanceMinutes: null }
    }
    case 'rain': {
      const { ratio, minutes } = againstGuidance(seen.amountUm, seen.minutes, thresholds.guidance)
      return { level: levelOf(ratio, 2), ratio, basis: 'rain guidance', guidanceMinutes: minutes }
    }
    case 'wind': {
      if (seen.gustMps === null) return { level: 'below', ratio: null, basis: 'damage', guidanceMinutes: null }
      const ratio = seen.gustMps / thresholds.severeGustMps
      return { level: levelOf(ratio, 65 / 50), ratio, basis: 'gust', guidanceMinutes: null }
    }
    case 'snow': {
      const ratio = (60 * seen.depthMm) / seen.minutes / thresholds.severeSnowMmPerH
      return { level: levelOf(ratio, 2), ratio, basis: 'snow rate', guidanceMinutes: null }
    }
    case 'flooding':
      return { level: byWater(seen), ratio: null, basis: 'water', guidanceMinutes: null }
  }
}

function levelOf(ratio: number, significantAt: number): SeverityLevel {
  if (ratio >= significantAt * rounding && ratio >= rounding) return 'significant'
  if (ratio >= rounding) return 'severe'
  return ratio >= nearShare * rounding ? 'near' : 'below'
}

function byWater(seen: Extract<UrgentObservation, { kind: 'flooding' }>): SeverityLevel {
  const isDeep = seen.depth === 'waist' || seen.depth === 'above waist'
  if (seen.things.includes('building') || isDeep || seen.isFast === true) return 'significant'
  const isMoreThanWet = seen.things.some((thing) => thing !== 'street' && thing !== 'field')
  if (isMoreThanWet || seen.isRising === true || seen.depth === 'knee') return 'severe'
  return 'near'
}

function leastByDamage({ kind, damage }: UrgentObservation): SeverityLevel {
  if (damage.includes('people hurt')) return 'significant'
  if (damage.length === 0) return 'below'
  return kind === 'wind' || kind === 'flooding' ? 'severe' : 'near'
}
