/**
 * Odds as one of the calibrated terms of [Mastrandrea2010], so that the same number always wears the same words:
 * above 0.99 virtually certain, 0.9 very likely, 0.66 likely, 0.33 about as likely as not, 0.1 unlikely, else very unlikely.
 */
import type { Words } from './messages.ts'

export function oddsInWords(odds: number, words: Words): string {
  if (odds > 0.99) return words.oddsWords.certain
  if (odds > 0.9) return words.oddsWords.veryLikely
  if (odds > 0.66) return words.oddsWords.likely
  if (odds >= 0.33) return words.oddsWords.even
  if (odds >= 0.1) return words.oddsWords.unlikely
  return words.oddsWords.veryUnlikely
}
