/** One reading of a test network with all that is worded about it, in a form that a file can keep. */
import type { ExpectedSpan } from '@gaugewright/desk'
import type { DayAround, Explanation, Finding, Unit } from '@gaugewright/science'

export interface JudgedCase {
  gaugeId: string
  gaugeName: string
  /** Unit of the network. */
  unit: Unit
  /** What the observer would have typed: in inches where the amount comes of hundredths, else in the file's millimetres. */
  typedText: string
  typedUnit: Unit
  finding: Finding
  explanations: Explanation[]
  expectedSpans: ExpectedSpan[]
  isSnowSeason: boolean
  daysAround: DayAround[]
  /** Chance of something at least as far out, were the reading right. */
  tailChance: number
  neighbours: { gaugeId: string; distanceKm: number; day: number; amountMm: number | null; weight: number }[]
  /** What was put in here, in words of the labels, or null where nothing was. */
  label: string | null
}

/** The kind that heads the case: that it stands, or the likeliest mistake. */
export function headOf({ explanations, finding }: Pick<JudgedCase, 'explanations' | 'finding'>): Explanation['kind'] {
  return explanations[0]?.kind ?? finding.likeliestMistake
}
