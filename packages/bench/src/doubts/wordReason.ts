/** What a doubt's surroundings look like, in words for a table and for the line that discusses the category. */
import type { LikelyReason } from './likelyReason.ts'

export interface ReasonWords {
  /** For a cell of a table. */
  short: string
  /** What it looks like, by which rule, and what it likely is. */
  discussion: string
}

export const reasonWords: Readonly<Record<LikelyReason, ReasonWords>> = {
  'long-zeros': {
    short: 'zeros for days',
    discussion:
      'a week or more of zeros while 30 mm or more fell around on three days or more: nobody looked, the gauge was blocked, or silence was stored as zero. Not a true reading.',
  },
  'zero-in-rain': {
    short: 'zero in rain',
    discussion:
      'a zero while all of the nearest gauges but one at most were wet, and no such amount on the day beside it: a missed reading stored as zero, most likely.',
  },
  'after-silence': {
    short: 'after silence',
    discussion:
      'nothing was reported on the day before, and the amount is more than fell on the day alone: a total since the last reading that was not declared.',
  },
  misdated: {
    short: 'a day off',
    discussion:
      'the amount fits what fell around on the day before or after, and not on its own day: a natural misdating, or rain about a reading hour that is not the neighbours’.',
  },
  total: {
    short: 'a total',
    discussion:
      'zeros before it, and about what fell around over those days together: a total of several days with zeros filled in.',
  },
  repeated: {
    short: 'as the day before',
    discussion:
      'exactly the amount of the day before: entered twice, most likely; now and then chance, with round amounts.',
  },
  'slipped-point': {
    short: 'ten times, or a tenth',
    discussion:
      'about ten times or a tenth of what fell around, with digits that a slipped point leaves: a lost or slipped point, most likely.',
  },
  'dry-around': {
    short: 'dry around',
    discussion:
      'wet while all of the nearest gauges were dry: a shower of its own where the season allows it, else water that is not rain, or an entry on the wrong day.',
  },
  'above-all': {
    short: 'above all around',
    discussion:
      'more than any of the nearest gauges had, without a better explanation: a downpour of its own or a wrong amount; the readings cannot tell which.',
  },
  'below-all': {
    short: 'below all around',
    discussion:
      'less than any of the nearest gauges had: part of the catch lost, part of it entered on another day, or the edge of the rain.',
  },
  within: {
    short: 'within the range',
    discussion:
      'within what the nearest gauges had: the reading probably stands, and the doubt is too strong, led by gauges farther off, by the days beside, or by its digits.',
  },
}
