/** What the desk says in English. One switch over every explanation; the compiler refuses a kind without words. */
import type { Explanation } from '@gaugewright/science'
import { type Figures, figuresFor } from './figures.ts'
import { expectedRange, isAbove, isUsual, type WordingAsk, type Words } from './wordingAsk.ts'

export function englishWords(explanation: Explanation, ask: WordingAsk): Words {
  const say = figuresFor('en', ask.unit)
  const { finding } = ask
  const typed = finding.isTrace ? 'a trace' : say.amount(finding.reportedMm)
  const implied = say.amount(explanation.impliedMm)
  const expected = expectedText(ask, say)
  const detail = explanation.detail
  switch (explanation.kind) {
    case 'stands':
      return {
        sentence: isUsual(finding)
          ? `${capital(typed)} fits this gauge and its neighbours: ${expected}.`
          : `${capital(typed)} is unusual here, but may well be right: ${expected}.`,
        question: 'Could you look at your note once more and tell us whether this is what the gauge showed?',
      }
    case 'decimal': {
      const places = detail?.kind === 'decimal' ? Math.abs(detail.places) : 1
      const meant = detail?.kind === 'decimal' ? finding.reportedMm / 10 ** detail.places : explanation.impliedMm
      return {
        sentence: `The decimal point may have slipped ${places === 1 ? 'one place' : 'two places'}: ${say.amount(meant)} typed as ${typed}. Here ${expected}.`,
        question: `Could you look where the decimal point stands in your note${detail === null ? '?' : `: is it ${typed}, or ${say.amount(meant)}?`} On the gauge the two look very different.`,
      }
    }
    case 'unit': {
      const measured = detail?.kind === 'unit' && detail.measuredIn === 'mm' ? 'millimetres' : 'inches'
      const field = measured === 'millimetres' ? 'inches' : 'millimetres'
      return {
        sentence: `The figure fits if it was read in ${measured} and typed as ${field}; it would then be ${implied}. Here ${expected}.`,
        question: `Could you look which scale the figure was read from, ${measured} or ${field}? Both are easily found on a gauge.`,
      }
    }
    case 'day': {
      const other = detail?.kind === 'day' ? detail.otherDay : finding.day
      const left = detail?.kind === 'day' && detail.otherReportedMm !== null ? detail.otherReportedMm : null
      return {
        sentence: `It fits the neighbours of ${say.day(other)} better${left === null ? '' : `, when this gauge reported ${say.amount(left)}`}. On ${say.day(finding.day)} ${expected}.`,
        question: `Could you look which morning this amount belongs to: ${say.day(finding.day)}, or ${say.day(other)}?`,
      }
    }
    case 'carried': {
      const total = detail?.kind === 'carried' ? detail : null
      const span = `${say.shortDay(explanation.firstDay)} to ${say.shortDay(explanation.lastDay)}`
      if (total !== null && total.endsOn !== finding.day) {
        return {
          sentence: `The ${say.amount(total.totalMm)} of ${say.day(total.endsOn)} fits a total over ${total.dayCount} days (${span}) that holds this day's rain as well. Here ${expected}.`,
          question:
            'Could you tell us whether the gauge was read and emptied that morning, or whether its water was counted with a later reading?',
        }
      }
      const days = total === null ? explanation.lastDay - explanation.firstDay + 1 : total.dayCount
      return {
        sentence: `${capital(typed)} fits the total of ${days} days (${span}) rather than of one. For one day ${expected}.`,
        question:
          'Could you tell us on which morning the gauge was emptied before this reading? If the water gathered over several days, we keep it as the total of those days.',
      }
    }
    case 'first-fill-lost':
      return {
        sentence: `It fits if the inner tube overflowed and its full fills were not added: ${implied} instead of ${typed}. Here ${expected}.`,
        question:
          'If the inner tube was full and water stood in the outer cylinder too: does the amount hold every full tube that was poured out, as well as the last one?',
      }
    case 'first-fill-only':
      return {
        sentence: `${capital(typed)} is a full inner tube; the water in the outer cylinder may not be counted yet. Here ${expected}.`,
        question:
          'The amount is just what a full inner tube holds. Was there water in the outer cylinder as well, to be measured and added?',
      }
    case 'false-zero':
      return {
        sentence: `Zero was typed where ${expected}. The gauge may not have been looked at, or the zero may stand for a day without a reading.`,
        question:
          'Could you tell us whether the gauge was looked at that morning and was dry? A morning without a look is quite all right: we then keep it as "no reading".',
      }
    case 'wetted':
      return {
        sentence: `${capital(typed)} on a day that was probably dry here (${expected}): dew, a sprinkler, splash or melting snow can leave as much.`,
        question:
          'Could you tell us whether it rained, or whether the water may have come from dew, a sprinkler, splashing or melting snow?',
      }
    case 'transposed': {
      const original = detail?.kind === 'transposed' ? detail.originalText : say.plain(explanation.impliedMm)
      return {
        sentence: `Two digits may have changed places: "${original}" typed as "${ask.typedText}". Here ${expected}.`,
        question: `Could you look at the order of the digits in your note: "${ask.typedText}"${detail === null ? '' : `, or "${original}"`}?`,
      }
    }
    case 'repeated': {
      const earlier = detail?.kind === 'repeated' ? detail.earlierDay : finding.day - 1
      return {
        sentence: `It is the amount of ${say.day(earlier)} again, ${typed} on both days. Here ${expected}.`,
        question: `It is the same amount as on ${say.day(earlier)}. Could you look whether each morning has its own note?`,
      }
    }
    case 'other':
      return {
        sentence: `${capital(typed)} is hard to explain: ${expected}, and none of the usual slips fits well.${isAbove(finding) ? ' A shower between the gauges would do it.' : ''}`,
        question:
          'Could you look at your note once more, and tell us whether anything happened at the gauge: moved, blocked by leaves, overflowed, read at another hour?',
      }
  }
}

/** The letter to the observer: what was typed, what to look at, thanks. */
export function englishMessage(question: string, ask: WordingAsk): string {
  const say = figuresFor('en', ask.unit)
  const { day, spanDays } = ask.finding
  const days = spanDays > 1 ? `${say.day(day - spanDays + 1)} to ${say.day(day)}` : say.day(day)
  const unitWord = ask.typedUnit === 'in' ? 'inches' : 'millimetres'
  const typed = ask.finding.isTrace ? `"${ask.typedText}" (a trace)` : `"${ask.typedText}" (${unitWord})`
  return [
    `${ask.observerName === null ? 'Hello' : `Dear ${ask.observerName}`},`,
    `Thank you for your reading at ${ask.gaugeName} for ${days}. You typed ${typed}.`,
    question,
    'If it is right as it stands, a short "yes" is all we need. Thank you for reading your gauge: every reading counts.',
  ].join('\n\n')
}

export function englishCannotTell(ask: WordingAsk): string {
  return `${ask.gaugeName} had too few neighbours with a reading that day, so its reading cannot be judged.`
}

function expectedText(ask: WordingAsk, say: Figures): string {
  const { lowMm, midMm, highMm } = expectedRange(ask.finding)
  if (highMm <= 0) return `a dry day was expected (${say.percent(ask.finding.expectation.dryChance)} sure)`
  return `${say.plain(lowMm)} to ${say.amount(highMm)} was expected, most likely about ${say.amount(midMm)}`
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}
