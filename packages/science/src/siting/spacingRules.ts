/**
 * Two rules of thumb for the distance of a gauge from what stands about it. In an open yard, twice the height of each
 * obstacle above the rim ([EPA2000] 3.2.3, isolated obstacles); in a built-up one, where that cannot be had, once
 * (common practice; the limit of class 3).
 */
import type { Skyline } from './skyline.ts'

export interface Spacing {
  obstacleId: string
  ratio: number
  /** Metres still missing to twice the height above the rim; 0 where the rule is met. */
  openMissingM: number
  /** The same for once the height. */
  builtUpMissingM: number
}

export function spacingRules({ obstacles }: Pick<Skyline, 'obstacles'>): Spacing[] {
  return obstacles.map(({ obstacleId, ratio, distanceM, aboveRimM }) => ({
    obstacleId,
    ratio,
    openMissingM: aboveRimM > 0 ? Math.max(0, 2 * aboveRimM - distanceM) : 0,
    builtUpMissingM: aboveRimM > 0 ? Math.max(0, aboveRimM - distanceM) : 0,
  }))
}
