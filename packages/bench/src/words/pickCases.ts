/** Picks cases of one explanation by a seed, from sure to doubtful. */
import { type ExplanationKind, seededRandom } from '@gaugewright/science'
import { headOf, type JudgedCase } from './judgedCase.ts'

/** Odds of standing that part the cases of a mistake: sure, very likely, likely, about even, doubtful. */
/** A mistake less likely than this is not worth a sentence. */
const leastOdds = 0.02
const mistakeBands = [0.01, 0.1, 0.33, 0.66, 0.9] as const

/** @returns up to `count` cases, the bands taken in turn, so that every degree of doubt is read */
export function pickCases(
  cases: readonly JudgedCase[],
  kind: ExplanationKind,
  count: number,
  seed: number,
): JudgedCase[] {
  const random = seededRandom(seed)
  const bands = kind === 'stands' ? standingBands(cases) : doubtedBands(cases, kind)
  for (const band of bands) shuffleInPlace(band, random)
  const picked: JudgedCase[] = []
  for (let round = 0; picked.length < count && bands.some((band) => band.length > round); round++) {
    for (const band of bands) {
      const one = band[round]
      if (one !== undefined && picked.length < count) picked.push(one)
    }
  }
  return picked.sort((a, b) => a.finding.standsOdds - b.finding.standsOdds)
}

function doubtedBands(cases: readonly JudgedCase[], kind: ExplanationKind): JudgedCase[][] {
  return mistakeBands.map((high, index) => {
    const low = index === 0 ? 0 : mistakeBands[index - 1]!
    return cases.filter(
      ({ finding }) =>
        finding.canTell &&
        finding.likeliestMistake === kind &&
        finding.standsOdds >= low &&
        finding.standsOdds < high &&
        finding.likeliestMistakeOdds >= leastOdds,
    )
  })
}

/** Readings that probably stand: doubted, unusual though hardly doubted, usual and wet, and dry. */
function standingBands(cases: readonly JudgedCase[]): JudgedCase[][] {
  const standing = cases.filter((one) => one.finding.canTell && headOf(one) === 'stands')
  const sure = standing.filter(({ finding }) => finding.standsOdds >= 0.9)
  return [
    standing.filter(({ finding }) => finding.standsOdds < 0.66),
    standing.filter(({ finding }) => finding.standsOdds >= 0.66 && finding.standsOdds < 0.9),
    sure.filter(({ tailChance }) => tailChance < 0.1),
    sure.filter(({ tailChance, finding }) => tailChance >= 0.1 && finding.reportedMm > 0),
    sure.filter(({ finding }) => finding.reportedMm === 0),
  ]
}

function shuffleInPlace<T>(items: T[], random: () => number): void {
  for (let last = items.length - 1; last > 0; last--) {
    const other = Math.floor(random() * (last + 1))
    const kept = items[last]!
    items[last] = items[other]!
    items[other] = kept
  }
}
