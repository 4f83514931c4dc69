/** The words for every question and problem about a typed amount, in one place. Codes and causes: docs/errors.md. */
import type { Language } from '../units/formatAmount.ts'
import type { AmountChoice, AmountProblemCode, AmountQuestionCode } from './amountAnswer.ts'

/**
 * What the person should do, as one or two sentences.
 * @param seen    the text, as typed
 * @param choices what it could mean; empty for a problem
 * @param limit   the step or limit that matters, as text with its unit, for instance `0.01 in`
 */
export function amountAdvice(
  code: AmountQuestionCode | AmountProblemCode,
  seen: string,
  choices: readonly AmountChoice[],
  limit: string,
  language: Language,
): string {
  const couldBe = listed(choices, language)
  return language === 'es' ? spanish(code, seen, couldBe, limit) : english(code, seen, couldBe, limit)
}

function english(code: AmountQuestionCode | AmountProblemCode, seen: string, couldBe: string, limit: string): string {
  switch (code) {
    case 'AMOUNT_ABOVE_CAPACITY':
      return `"${seen}" is more than the gauge holds (${limit}). Was it ${couldBe}?`
    case 'AMOUNT_DECIMAL_UNCLEAR':
      return `"${seen}" could be ${couldBe}. Type it with its decimal point, or set the sheet's decimal mark.`
    case 'AMOUNT_FINER_THAN_GAUGE':
      return `"${seen}" is finer than the gauge shows (${limit}). Was it ${couldBe}?`
    case 'AMOUNT_FRACTION_UNCLEAR':
      return `"${seen}" could be ${couldBe}. Type it with a decimal point.`
    case 'AMOUNT_IS_A_SUM':
      return `"${seen}" looks like several fills of the inner tube. Is the total ${couldBe}?`
    case 'AMOUNT_LETTER_FOR_DIGIT':
      return `"${seen}" has a letter among its digits. Was it ${couldBe}?`
    case 'AMOUNT_TRACE_UNCLEAR':
      return `"${seen}" names a trace and an amount. Was it ${couldBe}?`
    case 'AMOUNT_UNIT_UNUSUAL':
      return `Centimetres are not a unit of this gauge: "${seen}" could be ${couldBe}.`
    case 'AMOUNT_ZERO_OR_MISSING':
      return `"${seen}" could mean that the gauge was dry or that it was not read. Type 0 if you looked and it was dry; leave it empty if you did not.`
    case 'AMOUNT_ABOVE_RECORD':
      return `No such amount has ever been measured (${limit} is the most). Check the decimal point and the unit.`
    case 'AMOUNT_NEGATIVE':
      return 'An amount cannot be below zero. If this stands for a missing reading, leave it empty or name it as a mark for missing.'
    case 'AMOUNT_TWO_POINTS':
      return `"${seen}" has more than one decimal point. Type it again with one.`
    case 'AMOUNT_UNREADABLE':
      return `"${seen}" is not an amount. Type a number such as ${limit}, T for a trace, or leave it empty if there was no reading.`
  }
}

function spanish(code: AmountQuestionCode | AmountProblemCode, seen: string, couldBe: string, limit: string): string {
  switch (code) {
    case 'AMOUNT_ABOVE_CAPACITY':
      return `«${seen}» es más de lo que cabe en el pluviómetro (${limit}). ¿Era ${couldBe}?`
    case 'AMOUNT_DECIMAL_UNCLEAR':
      return `«${seen}» puede ser ${couldBe}. Escríbalo con su signo decimal o indique el signo decimal de la hoja.`
    case 'AMOUNT_FINER_THAN_GAUGE':
      return `«${seen}» es más fino de lo que marca el pluviómetro (${limit}). ¿Era ${couldBe}?`
    case 'AMOUNT_FRACTION_UNCLEAR':
      return `«${seen}» puede ser ${couldBe}. Escríbalo con signo decimal.`
    case 'AMOUNT_IS_A_SUM':
      return `«${seen}» parece la suma de varias medidas del tubo interior. ¿El total es ${couldBe}?`
    case 'AMOUNT_LETTER_FOR_DIGIT':
      return `«${seen}» tiene una letra entre las cifras. ¿Era ${couldBe}?`
    case 'AMOUNT_TRACE_UNCLEAR':
      return `«${seen}» nombra una traza y una cantidad. ¿Era ${couldBe}?`
    case 'AMOUNT_UNIT_UNUSUAL':
      return `El pluviómetro no se lee en centímetros: «${seen}» puede ser ${couldBe}.`
    case 'AMOUNT_ZERO_OR_MISSING':
      return `«${seen}» puede significar que no había agua o que no se miró. Escriba 0 si miró y estaba seco; déjelo vacío si no.`
    case 'AMOUNT_ABOVE_RECORD':
      return `Nunca se ha medido tanto (el máximo es ${limit}). Revise el signo decimal y la unidad.`
    case 'AMOUNT_NEGATIVE':
      return 'Una cantidad no puede ser negativa. Si indica que falta la lectura, déjelo vacío o declárelo como marca de ausencia.'
    case 'AMOUNT_TWO_POINTS':
      return `«${seen}» tiene más de un signo decimal. Escríbalo de nuevo con uno solo.`
    case 'AMOUNT_UNREADABLE':
      return `«${seen}» no es una cantidad. Escriba un número como ${limit}, T si es una traza, o déjelo vacío si no hubo lectura.`
  }
}

function listed(choices: readonly AmountChoice[], language: Language): string {
  const [noReading, or, trace] =
    language === 'es' ? ['sin lectura', ' o ', 'una traza'] : ['no reading', ' or ', 'a trace']
  const texts = choices.map((choice) => (choice.kind === 'missing' ? noReading : choice.isTrace ? trace : choice.text))
  return texts.length < 2 ? (texts[0] ?? '') : `${texts.slice(0, -1).join(', ')}${or}${texts[texts.length - 1]}`
}
