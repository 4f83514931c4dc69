/** What the observer is asked in Spanish: kind, short, and from what the observer typed alone. */
import type { Figures } from './figures.ts'
import type { Question } from './question.ts'
import type { WordingAsk } from './wordingAsk.ts'

const unitWords = { mm: 'milímetros', in: 'pulgadas' } as const

export function spanishQuestion(question: Question, say: Figures): string {
  switch (question.kind) {
    case 'stands':
      return '¿Podría mirar de nuevo su nota y decirnos si es lo que marcaba el pluviómetro?'
    case 'decimal': {
      const { typedText, meantText, hidesDigits, unit } = question
      const choice =
        meantText === null
          ? '?'
          : `: ${typedText} o ${hidesDigits ? 'alrededor de ' : ''}${meantText} ${unitWords[unit]}?`
      return `¿Podría mirar dónde está la coma decimal en su nota${choice}`
    }
    case 'unit':
      return question.isConverted
        ? `¿Podría decirnos de dónde salió ${question.typedText}: es lo que marcaba el pluviómetro, o se convirtió desde otra unidad?`
        : `¿Podría mirar en qué escala se leyó ${question.typedText}: en ${unitWords[question.unit]} o en ${unitWords[question.otherUnit]}?`
    case 'day':
      if (question.text === null)
        return '¿Podría mirar si cada lectura de estos días está en la mañana que le corresponde?'
      return `¿Podría mirar a qué mañana corresponde la lectura de ${question.text} ${unitWords[question.unit]}: a la del ${say.day(question.typedFor)} o a la del ${say.day(question.otherDay)}?`
    case 'carried':
      return question.isTotal
        ? '¿Podría decirnos qué mañana se vació el pluviómetro por última vez antes de esta lectura? Si el agua se reunió en varios días, no hay ningún problema: la guardamos como total de esos días.'
        : `¿Podría decirnos si esa mañana se leyó y vació el pluviómetro, o si su agua se contó con la lectura del ${say.day(question.endsOn)}? Las dos cosas están bien.`
    case 'first-fill-lost':
      return 'Si el tubo interior estaba lleno y había agua también en el cilindro exterior: ¿incluye la cantidad todos los tubos llenos que vació, además del último?'
    case 'first-fill-only':
      return 'La cantidad es más o menos lo que cabe en el tubo interior. ¿Había agua también en el cilindro exterior, por medir y sumar?'
    case 'false-zero':
      return '¿Podría decirnos si esa mañana se miró el pluviómetro y estaba seco? Una mañana sin mirarlo no es ningún problema: la guardamos como "sin lectura".'
    case 'wetted':
      return `¿Podría decirnos si llovió, o si el agua pudo venir del rocío, de un aspersor, de una salpicadura${question.maySnow ? ', de nieve fundida' : ''} o de otra cosa?`
    case 'transposed': {
      const choice =
        question.originalText === null
          ? ''
          : `: ${question.swappedText} o ${question.originalText} ${unitWords[question.unit]}`
      return question.isAsTyped
        ? `¿Podría mirar el orden de las cifras en su nota${choice}?`
        : `¿Podría mirar el orden de las cifras antes de convertir la cantidad${choice}?`
    }
    case 'repeated':
      return `Es la misma cantidad que el ${say.day(question.earlierDay)}, cosa que bien puede ocurrir. ¿Podría mirar si cada una de las dos mañanas tiene su propia nota?`
    case 'other':
      return '¿Podría mirar de nuevo su nota y decirnos si pasó algo con el pluviómetro: si se movió, se tapó con hojas, se volcó o se leyó a otra hora?'
  }
}

/** The letter: what was typed, what to look at, thanks. */
export function spanishMessage(question: string, ask: WordingAsk, say: Figures): string {
  const { day, spanDays } = ask.finding
  const days = spanDays > 1 ? `del ${say.day(day - spanDays + 1)} al ${say.day(day)}` : `del ${say.day(day)}`
  const typed = `"${ask.typedText}" (${ask.finding.isTrace ? 'una traza' : unitWords[ask.typedUnit]})`
  return [
    ask.observerName === null ? 'Buenos días:' : `Buenos días, ${ask.observerName}:`,
    `Gracias por su lectura ${days} en ${ask.gaugeName}. Escribió ${typed}.`,
    question,
    'Si lo que escribió está bien, basta un breve "sí". Gracias por leer su pluviómetro: cada lectura cuenta.',
  ].join('\n\n')
}
