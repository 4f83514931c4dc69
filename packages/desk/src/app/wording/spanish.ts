/** What the desk says in Spanish. One switch over every explanation; the compiler refuses a kind without words. */
import type { Explanation } from '@gaugewright/science'
import { type Figures, figuresFor } from './figures.ts'
import { expectedRange, isAbove, isUsual, type WordingAsk, type Words } from './wordingAsk.ts'

export function spanishWords(explanation: Explanation, ask: WordingAsk): Words {
  const say = figuresFor('es', ask.unit)
  const { finding } = ask
  const typed = finding.isTrace ? 'una traza' : say.amount(finding.reportedMm)
  const implied = say.amount(explanation.impliedMm)
  const expected = expectedText(ask, say)
  const detail = explanation.detail
  switch (explanation.kind) {
    case 'stands':
      return {
        sentence: isUsual(finding)
          ? `${capital(typed)} encaja con este pluviómetro y sus vecinos: ${expected}.`
          : `${capital(typed)} es poco habitual aquí, pero bien puede ser correcto: ${expected}.`,
        question: '¿Podría mirar de nuevo su nota y decirnos si es lo que marcaba el pluviómetro?',
      }
    case 'decimal': {
      const places = detail?.kind === 'decimal' ? Math.abs(detail.places) : 1
      const meant = detail?.kind === 'decimal' ? finding.reportedMm / 10 ** detail.places : explanation.impliedMm
      return {
        sentence: `La coma decimal puede haberse corrido ${places === 1 ? 'un lugar' : 'dos lugares'}: ${say.amount(meant)} escrito como ${typed}. Aquí ${expected}.`,
        question: `¿Podría mirar dónde está el decimal en su nota${detail === null ? '?' : `: ${typed} o ${say.amount(meant)}?`} En el pluviómetro se ven muy distintos.`,
      }
    }
    case 'unit': {
      const measured = detail?.kind === 'unit' && detail.measuredIn === 'mm' ? 'milímetros' : 'pulgadas'
      const field = measured === 'milímetros' ? 'pulgadas' : 'milímetros'
      return {
        sentence: `La cifra encaja si se leyó en ${measured} y se escribió como ${field}; sería entonces ${implied}. Aquí ${expected}.`,
        question: `¿Podría mirar en qué escala se leyó la cifra, ${measured} o ${field}? Muchos pluviómetros llevan las dos.`,
      }
    }
    case 'day': {
      const other = detail?.kind === 'day' ? detail.otherDay : finding.day
      const left = detail?.kind === 'day' && detail.otherReportedMm !== null ? detail.otherReportedMm : null
      return {
        sentence: `Encaja mejor con los vecinos del ${say.day(other)}${left === null ? '' : `, cuando aquí se anotó ${say.amount(left)}`}. El ${say.day(finding.day)} ${expected}.`,
        question: `¿Podría mirar a qué mañana pertenece esta cantidad: al ${say.day(finding.day)} o al ${say.day(other)}?`,
      }
    }
    case 'carried': {
      const total = detail?.kind === 'carried' ? detail : null
      const span = `del ${say.shortDay(explanation.firstDay)} al ${say.shortDay(explanation.lastDay)}`
      if (total !== null && total.endsOn !== finding.day) {
        return {
          sentence: `Los ${say.amount(total.totalMm)} del ${say.day(total.endsOn)} encajan como total de ${total.dayCount} días (${span}) que incluye también la lluvia de este día. Aquí ${expected}.`,
          question:
            '¿Podría decirnos si esa mañana se leyó y vació el pluviómetro, o si su agua se contó en una lectura posterior?',
        }
      }
      const days = total === null ? explanation.lastDay - explanation.firstDay + 1 : total.dayCount
      return {
        sentence: `${capital(typed)} encaja mejor como total de ${days} días (${span}) que de uno solo. Para un día ${expected}.`,
        question:
          '¿Podría decirnos qué mañana se vació el pluviómetro antes de esta lectura? Si el agua se reunió en varios días, la guardamos como total de esos días.',
      }
    }
    case 'first-fill-lost':
      return {
        sentence: `Encaja si el tubo interior rebosó y sus llenados completos no se sumaron: ${implied} en lugar de ${typed}. Aquí ${expected}.`,
        question:
          'Si el tubo interior estaba lleno y había agua también en el cilindro exterior: ¿incluye la cantidad cada tubo lleno que se vació, además del último?',
      }
    case 'first-fill-only':
      return {
        sentence: `${capital(typed)} es un tubo interior lleno; puede faltar el agua del cilindro exterior. Aquí ${expected}.`,
        question:
          'La cantidad es justo lo que cabe en el tubo interior. ¿Había agua también en el cilindro exterior, por medir y sumar?',
      }
    case 'false-zero':
      return {
        sentence: `Se escribió cero donde ${expected}. Quizá no se miró el pluviómetro, o el cero señala un día sin lectura.`,
        question:
          '¿Podría decirnos si esa mañana se miró el pluviómetro y estaba seco? Una mañana sin mirarlo no es ningún problema: la guardamos como "sin lectura".',
      }
    case 'wetted':
      return {
        sentence: `${capital(typed)} en un día probablemente seco aquí (${expected}): el rocío, un aspersor, salpicaduras o nieve fundida pueden dejar tanto.`,
        question:
          '¿Podría decirnos si llovió, o si el agua pudo venir del rocío, un aspersor, salpicaduras o nieve fundida?',
      }
    case 'transposed': {
      const original = detail?.kind === 'transposed' ? detail.originalText : say.plain(explanation.impliedMm)
      return {
        sentence: `Dos cifras pueden haber cambiado de lugar: "${original}" escrito como "${ask.typedText}". Aquí ${expected}.`,
        question: `¿Podría mirar el orden de las cifras en su nota: "${ask.typedText}"${detail === null ? '' : ` o "${original}"`}?`,
      }
    }
    case 'repeated': {
      const earlier = detail?.kind === 'repeated' ? detail.earlierDay : finding.day - 1
      return {
        sentence: `Es otra vez la cantidad del ${say.day(earlier)}, ${typed} los dos días. Aquí ${expected}.`,
        question: `Es la misma cantidad que el ${say.day(earlier)}. ¿Podría mirar si cada mañana tiene su propia nota?`,
      }
    }
    case 'other':
      return {
        sentence: `${capital(typed)} es difícil de explicar: ${expected}, y ningún desliz habitual encaja bien.${isAbove(finding) ? ' Un chubasco entre los pluviómetros lo explicaría.' : ''}`,
        question:
          '¿Podría mirar de nuevo su nota y decirnos si pasó algo con el pluviómetro: movido, tapado por hojas, rebosado, leído a otra hora?',
      }
  }
}

/** The letter to the observer: what was typed, what to look at, thanks. */
export function spanishMessage(question: string, ask: WordingAsk): string {
  const say = figuresFor('es', ask.unit)
  const { day, spanDays } = ask.finding
  const days = spanDays > 1 ? `del ${say.day(day - spanDays + 1)} al ${say.day(day)}` : `del ${say.day(day)}`
  const unitWord = ask.typedUnit === 'in' ? 'pulgadas' : 'milímetros'
  const typed = ask.finding.isTrace ? `"${ask.typedText}" (una traza)` : `"${ask.typedText}" (${unitWord})`
  return [
    ask.observerName === null ? 'Buenos días:' : `Buenos días, ${ask.observerName}:`,
    `Gracias por su lectura ${days} en ${ask.gaugeName}. Escribió ${typed}.`,
    question,
    'Si está bien así, basta un breve "sí". Gracias por leer su pluviómetro: cada lectura cuenta.',
  ].join('\n\n')
}

export function spanishCannotTell(ask: WordingAsk): string {
  return `${ask.gaugeName} tuvo muy pocos vecinos con lectura ese día; su lectura no se puede valorar.`
}

function expectedText(ask: WordingAsk, say: Figures): string {
  const { lowMm, midMm, highMm } = expectedRange(ask.finding)
  if (highMm <= 0) return `se esperaba un día seco (${say.percent(ask.finding.expectation.dryChance)} de certeza)`
  return `se esperaba de ${say.plain(lowMm)} a ${say.amount(highMm)}, lo más probable unos ${say.amount(midMm)}`
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}
