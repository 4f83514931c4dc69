/** Which undecided readings are left to a person. */
import type { Morning } from './loadMorning.ts'

export type DocketTest = (readingId: string, odds: { standsOdds: number; canTell: boolean }) => boolean

/**
 * A reading comes to the docket by its odds, where something can be told; and whatever its odds, where a person took back
 * what a rule had decided about it: then it is theirs.
 */
export function docketTest({ decisions, docketBelow }: Pick<Morning, 'decisions' | 'docketBelow'>): DocketTest {
  const ofRule = new Set<string>()
  const handedOver = new Set<string>()
  for (const { by, id, readingId, undoes } of decisions) {
    if (by.kind === 'rule') ofRule.add(id)
    else if (undoes !== null && ofRule.has(undoes)) handedOver.add(readingId)
  }
  return (readingId, { canTell, standsOdds }) => handedOver.has(readingId) || (canTell && standsOdds < docketBelow)
}
