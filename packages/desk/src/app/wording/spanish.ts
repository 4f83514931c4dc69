/**
 * What the coordinator is told in Spanish. One switch over every claim; the compiler refuses a kind without words.
 * The first sentence says how sure and what happened, the second what was expected. The observer's words: spanishLetter.ts.
 */
import type { Claim } from './claim.ts'
import type { Degree } from './degree.ts'
import type { Expected, Place } from './expected.ts'
import type { Figures } from './figures.ts'
import type { Swap } from './mistakenText.ts'

const places: Record<Exclude<Place, 'within'>, string> = {
  'far below': 'mucho menos',
  below: 'menos',
  above: 'más',
  'far above': 'mucho más',
}

const leads: Record<Degree, string> = {
  certain: 'Casi con seguridad, ',
  'very likely': 'Muy probablemente ',
  likely: 'Probablemente ',
  even: 'Quizá ',
  unlikely: 'Posible, pero poco probable: ',
  'very unlikely': 'Muy poco probable: ',
  'first of many': 'Ninguna explicación sola es probable; la primera: ',
}

/** Degrees at which other explanations together are likelier. */
const doubted: ReadonlySet<Degree> = new Set<Degree>(['unlikely', 'very unlikely', 'first of many'])

/** How a reading outside what was expected may still be right. */
const stillRight: Record<Degree, string> = {
  certain: 'aunque casi con seguridad correcto: ningún desliz lo explica mejor',
  'very likely': 'aunque muy probablemente correcto: ningún desliz lo explica mejor',
  likely: 'aunque probablemente correcto: ningún desliz lo explica mejor',
  even: 'y puede ser correcto o no',
  unlikely: 'y es poco probable que sea correcto',
  'very unlikely': 'y es muy poco probable que sea correcto',
  'first of many': 'y es poco probable que sea correcto, aunque ningún desliz lo explica mejor',
}

export function spanishSentence(claim: Claim, say: Figures): string {
  const typed = typedAmount(claim, say)
  const here = `${claim.spanDays > 1 ? `Para estos ${claim.spanDays} días` : 'Aquí'} ${expectedClause(claim.expected, say, claim.typedMm <= 0 && !claim.isTrace)}.`
  const lead = leads[claim.degree]
  switch (claim.kind) {
    case 'stands':
      if (claim.place !== 'within')
        return `${capital(typed)} es ${places[claim.place]} de lo esperado, ${stillRight[claim.degree]}. ${here}`
      return doubted.has(claim.degree)
        ? `${capital(typed)} encajaría por sí solo, pero otras explicaciones juntas son más probables. ${here}`
        : `${capital(typed)} concuerda con los vecinos${claim.degree === 'even' ? ', pero puede ser correcto o no' : ''}. ${here}`
    case 'decimal':
      return `${lead}la coma decimal se corrió${claim.places === null ? '' : claim.places === 1 ? ' un lugar' : ' dos lugares'}, ${claim.isRounded ? 'alrededor de ' : ''}${say.own(claim.meantMm, claim.hidesDigits ? 'about' : 'read')} escrito como ${typed}. ${here}`
    case 'unit':
      return `${lead}${unitClause(claim, typed, say)}. ${here}`
    case 'day':
      return `${lead}${dayClauses(claim, typed, say)}`
    case 'carried':
      return `${lead}${carriedClauses(claim, typed, say)}`
    case 'first-fill-lost':
      return `${lead}se vació un tubo interior lleno sin sumarlo; con él, ${typed} pasa a ser ${say.own(claim.meantMm, 'read')}. ${here}`
    case 'first-fill-only':
      return `${lead}se contó solo el tubo interior lleno, ${typed}, sin el agua que lo rodea en el cilindro exterior${claim.isAbove ? ', aunque el tubo solo ya es más de lo esperado' : ''}. ${here}`
    case 'false-zero':
      return `${lead}el cero señala una mañana en la que no se miró el pluviómetro. ${here}`
    case 'wetted':
      return `${lead}${typed} vino ${waters(claim)}, no de la lluvia de ese día. ${here}`
    case 'transposed':
      return `${lead}dos cifras cambiaron de lugar${swapClause(claim)}. ${here}`
    case 'repeated':
      return `${lead}se escribió otra vez la cantidad del ${say.day(claim.earlierDay)}, ${typed} los dos días. ${here}`
    case 'other':
      return `${lead}detrás de ${typed} hay algo distinto de los deslices habituales${claim.mayBeShower ? '; también lo explicaría un chubasco que no alcanzó a los vecinos' : ''}. ${here}`
  }
}

export function spanishCannotTell(gaugeName: string): string {
  return `${gaugeName} tuvo muy pocos vecinos con lectura ese día; su lectura no se puede valorar.`
}

function typedAmount({ typedMm, typedText, isTrace }: Claim, say: Figures): string {
  if (isTrace) return 'una traza'
  if (typedMm <= 0) return 'cero'
  return say.typed(typedText, typedMm)
}

/** @param withDry  says the chance of a dry day too, where a zero was typed */
function expectedClause(expected: Expected, say: Figures, withDry = false): string {
  const chance = `probabilidad de día seco: ${say.percent(expected.dryChance)}`
  switch (expected.form) {
    case 'dry':
      return `se esperaba un día seco (probabilidad: ${say.percent(expected.dryChance)})`
    case 'little':
      return `lo probable era, como mucho, ${say.about(expected.highMm)} (${chance})`
    case 'amount': {
      const { lowMm, midMm, highMm } = expected
      const range = `probablemente entre ${say.aboutPlain(lowMm)} y ${say.about(highMm)}`
      return `se esperaba alrededor de ${say.about(midMm)} (${range}${withDry ? `; ${chance}` : ''})`
    }
  }
}

function unitClause(claim: Extract<Claim, { kind: 'unit' }>, typed: string, say: Figures): string {
  const [measured, other] = claim.measuredIn === 'in' ? ['pulgadas', 'milímetros'] : ['milímetros', 'pulgadas']
  return claim.isConverted
    ? `una cantidad de ${say.readIn(claim.meantMm, claim.measuredIn)} se tomó por ${other} y se convirtió en ${typed}`
    : `"${claim.typedText}" se leyó en ${measured}, no en ${other}${claim.isOffScale ? ', aunque las escalas en milímetros no muestran centésimas' : ''}; eso da alrededor de ${say.about(claim.meantMm)}`
}

function dayClauses(claim: Extract<Claim, { kind: 'day' }>, typed: string, say: Figures): string {
  const { day, otherDay, otherMm, otherExpected } = claim
  const here = `Para el ${say.day(day)}, ${expectedClause(claim.expected, say)}`
  const there = otherExpected === null ? '' : `; para el ${say.day(otherDay)}, ${expectedClause(otherExpected, say)}`
  if (claim.owner === 'both')
    return `las lecturas de los días de alrededor están fechadas con un día de diferencia, y este cero con ellas. ${here}.`
  if (claim.owner === 'this')
    return `la cantidad del ${say.day(otherDay)} (${say.exact(otherMm ?? 0)}) corresponde a este día, para el que se escribió cero. ${here}${there}.`
  const reported =
    otherMm === null ? 'que no tiene lectura' : `para el que se escribió ${otherMm <= 0 ? 'cero' : say.exact(otherMm)}`
  const back =
    claim.belongsHere === null
      ? ''
      : `, y la del ${say.day(claim.belongsHere.day)} (${say.exact(claim.belongsHere.amountMm)}) a este día`
  return `la cantidad de ${typed} corresponde al ${say.day(otherDay)}, ${reported}${back}. ${here}${there}.`
}

function carriedClauses(claim: Extract<Claim, { kind: 'carried' }>, typed: string, say: Figures): string {
  const { dayCount, totalExpected } = claim
  const days = `${dayCount} días (${say.days(claim.firstDay, claim.lastDay)})`
  const alone = expectedClause(claim.expected, say)
  const expected =
    totalExpected === null
      ? `Para este día solo ${alone}.`
      : claim.isAllThisDay
        ? `En esos días, como para este día solo, ${alone}.`
        : `En esos días ${expectedClause(totalExpected, say)}; para este día solo, ${alone}.`
  if (!claim.isTotal)
    return `la cantidad del ${say.day(claim.endsOn)} (${say.exact(claim.totalMm)}) es un total de ${days} que incluye también este día. ${expected}`
  const earlier = dayCount === 2 ? 'el día anterior' : `los ${dayCount - 1} días anteriores`
  const before = {
    zeros: `con cero escrito para ${earlier}`,
    silence: `sin lectura ${earlier}`,
    both: `con cero o sin lectura ${earlier}`,
  }[claim.before]
  return `${typed} es un total de ${days}, ${before}. ${expected}`
}

function swapClause({ originalText, swappedText, unit, isAsTyped }: Swap): string {
  if (originalText === null) return ''
  return isAsTyped
    ? `, "${originalText}" escrito como "${swappedText}"`
    : `, ${originalText} ${unit} se volvió ${swappedText} ${unit}`
}

function waters({ isSmall, maySnow }: Extract<Claim, { kind: 'wetted' }>): string {
  if (isSmall) return maySnow ? 'del rocío, de una salpicadura o de nieve fundida' : 'del rocío o de una salpicadura'
  return maySnow ? 'de un aspersor, de una salpicadura o de nieve fundida' : 'de un aspersor o de una salpicadura'
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}
