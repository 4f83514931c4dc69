/**
 * What the coordinator is told in English. One switch over every claim; the compiler refuses a kind without words.
 * The first sentence says how sure and what happened, the second what was expected. The observer's words: englishLetter.ts.
 */
import type { Claim } from './claim.ts'
import type { Degree } from './degree.ts'
import type { Expected, Place } from './expected.ts'
import type { Figures } from './figures.ts'
import type { Swap } from './mistakenText.ts'

const places: Record<Exclude<Place, 'within'>, string> = {
  'far below': 'far less',
  below: 'less',
  above: 'more',
  'far above': 'far more',
}

const leads: Record<Degree, string> = {
  certain: 'Almost certainly ',
  'very likely': 'Very likely ',
  likely: 'Probably ',
  even: 'Perhaps ',
  unlikely: 'Possible, but not likely: ',
  'very unlikely': 'Very unlikely: ',
  'first of many': 'No single explanation is likely; the first: ',
}

/** Degrees at which other explanations together are likelier. */
const doubted: ReadonlySet<Degree> = new Set<Degree>(['unlikely', 'very unlikely', 'first of many'])

/** How a reading outside what was expected may still be right. */
const stillRight: Record<Degree, string> = {
  certain: 'yet almost certainly right: no slip explains it better',
  'very likely': 'yet very likely right: no slip explains it better',
  likely: 'yet probably right: no slip explains it better',
  even: 'and may or may not be right',
  unlikely: 'and not likely to be right',
  'very unlikely': 'and very unlikely to be right',
  'first of many': 'and not likely to be right, though no slip explains it better',
}

export function englishSentence(claim: Claim, say: Figures): string {
  const typed = typedAmount(claim, say)
  const here = `${claim.spanDays > 1 ? `For these ${claim.spanDays} days` : 'Here'} ${expectedClause(claim.expected, say, claim.typedMm <= 0 && !claim.isTrace)}.`
  const lead = leads[claim.degree]
  switch (claim.kind) {
    case 'stands':
      if (claim.place !== 'within')
        return `${capital(typed)} is ${places[claim.place]} than expected, ${stillRight[claim.degree]}. ${here}`
      return doubted.has(claim.degree)
        ? `${capital(typed)} would fit by itself, but other explanations taken together are likelier. ${here}`
        : `${capital(typed)} fits in with the neighbours${claim.degree === 'even' ? ', yet may or may not be right' : ''}. ${here}`
    case 'decimal':
      return `${lead}the decimal point slipped${claim.places === null ? '' : claim.places === 1 ? ' one place' : ' two places'}, ${claim.isRounded ? 'about ' : ''}${say.own(claim.meantMm, claim.hidesDigits ? 'about' : 'read')} typed as ${typed}. ${here}`
    case 'unit':
      return `${lead}${unitClause(claim, typed, say)}. ${here}`
    case 'day':
      return `${lead}${dayClauses(claim, typed, say)}`
    case 'carried':
      return `${lead}${carriedClauses(claim, typed, say)}`
    case 'first-fill-lost':
      return `${lead}a full inner tube was poured out and not added; with it, ${typed} becomes ${say.own(claim.meantMm, 'read')}. ${here}`
    case 'first-fill-only':
      return `${lead}only the full inner tube, ${typed}, was counted and not the water around it in the outer cylinder${claim.isAbove ? ', though the tube alone is more than expected' : ''}. ${here}`
    case 'false-zero':
      return `${lead}the zero stands for a morning without a look at the gauge. ${here}`
    case 'wetted':
      return `${lead}${typed} came from ${waters(claim)}, not from rain of that day. ${here}`
    case 'transposed':
      return `${lead}two digits changed places${swapClause(claim)}. ${here}`
    case 'repeated':
      return `${lead}the amount of ${say.day(claim.earlierDay)} was typed again, ${typed} on both days. ${here}`
    case 'other':
      return `${lead}something other than the usual slips is behind ${typed}${claim.mayBeShower ? '; a shower that missed the neighbours would explain it too' : ''}. ${here}`
  }
}

export function englishCannotTell(gaugeName: string): string {
  return `${gaugeName} had too few neighbours with a reading that day, so its reading cannot be judged.`
}

function typedAmount({ typedMm, typedText, isTrace }: Claim, say: Figures): string {
  if (isTrace) return 'a trace'
  if (typedMm <= 0) return 'zero'
  return say.typed(typedText, typedMm)
}

/** @param withDry  says the chance of a dry day too, where a zero was typed */
function expectedClause(expected: Expected, say: Figures, withDry = false): string {
  const chance = `${say.percent(expected.dryChance)} chance of a dry day`
  switch (expected.form) {
    case 'dry':
      return `a dry day was expected (${say.percent(expected.dryChance)} chance)`
    case 'little':
      return `up to ${say.about(expected.highMm)} was likely (${chance})`
    case 'amount': {
      const { lowMm, midMm, highMm } = expected
      const range = `likely ${say.aboutPlain(lowMm)} to ${say.about(highMm)}`
      return `about ${say.about(midMm)} was expected (${range}${withDry ? `, ${chance}` : ''})`
    }
  }
}

function unitClause(claim: Extract<Claim, { kind: 'unit' }>, typed: string, say: Figures): string {
  const [measured, other] = claim.measuredIn === 'in' ? ['inches', 'millimetres'] : ['millimetres', 'inches']
  return claim.isConverted
    ? `an amount of ${say.readIn(claim.meantMm, claim.measuredIn)} was taken for ${other} and converted to ${typed}`
    : `"${claim.typedText}" was read in ${measured}, not in ${other}${claim.isOffScale ? ', though millimetre scales show no hundredths' : ''}; that makes about ${say.about(claim.meantMm)}`
}

function dayClauses(claim: Extract<Claim, { kind: 'day' }>, typed: string, say: Figures): string {
  const { day, otherDay, otherMm, otherExpected } = claim
  const here = `For ${say.day(day)}, ${expectedClause(claim.expected, say)}`
  const there = otherExpected === null ? '' : `; for ${say.day(otherDay)}, ${expectedClause(otherExpected, say)}`
  if (claim.owner === 'both') return `the readings around this day are dated a day off, its zero with them. ${here}.`
  if (claim.owner === 'this')
    return `the ${say.exact(otherMm ?? 0)} of ${say.day(otherDay)} belongs to this day, for which zero was typed. ${here}${there}.`
  const reported =
    otherMm === null ? 'which has no reading' : `for which ${otherMm <= 0 ? 'zero' : say.exact(otherMm)} was typed`
  const back =
    claim.belongsHere === null
      ? ''
      : `, and the ${say.exact(claim.belongsHere.amountMm)} of ${say.day(claim.belongsHere.day)} to this day`
  return `${typed} belongs to ${say.day(otherDay)}, ${reported}${back}. ${here}${there}.`
}

function carriedClauses(claim: Extract<Claim, { kind: 'carried' }>, typed: string, say: Figures): string {
  const { dayCount, totalExpected } = claim
  const days = `${dayCount} days (${say.days(claim.firstDay, claim.lastDay)})`
  const alone = expectedClause(claim.expected, say)
  const expected =
    totalExpected === null
      ? `For this day alone ${alone}.`
      : claim.isAllThisDay
        ? `Over these days, as for this day alone, ${alone}.`
        : `Over these days ${expectedClause(totalExpected, say)}; for this day alone, ${alone}.`
  if (!claim.isTotal)
    return `the ${say.exact(claim.totalMm)} of ${say.day(claim.endsOn)} is a total of ${days} that holds this day too. ${expected}`
  const earlier = dayCount === 2 ? 'the day before' : `the ${dayCount - 1} days before`
  const before = {
    zeros: `zero typed for ${earlier}`,
    silence: `no reading for ${earlier}`,
    both: `zeros or no reading for ${earlier}`,
  }[claim.before]
  return `${typed} is a total of ${days}, with ${before}. ${expected}`
}

function swapClause({ originalText, swappedText, unit, isAsTyped }: Swap): string {
  if (originalText === null) return ''
  return isAsTyped
    ? `, "${originalText}" typed as "${swappedText}"`
    : `, ${originalText} ${unit} became ${swappedText} ${unit}`
}

function waters({ isSmall, maySnow }: Extract<Claim, { kind: 'wetted' }>): string {
  if (isSmall) return maySnow ? 'dew, a splash or melting snow' : 'dew or a splash'
  return maySnow ? 'a sprinkler, a splash or melting snow' : 'a sprinkler or a splash'
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}
