/** What the observer is asked in English: kind, short, and from what the observer typed alone. */
import type { Figures } from './figures.ts'
import type { Question } from './question.ts'
import type { WordingAsk } from './wordingAsk.ts'

const unitWords = { mm: 'millimetres', in: 'inches' } as const

export function englishQuestion(question: Question, say: Figures): string {
  switch (question.kind) {
    case 'stands':
      return 'Could you look at your note once more and tell us whether this is what the gauge showed?'
    case 'decimal': {
      const { typedText, meantText, hidesDigits, unit } = question
      const choice =
        meantText === null
          ? '?'
          : `: is it ${typedText}, or ${hidesDigits ? 'about ' : ''}${meantText} ${unitWords[unit]}?`
      return `Could you check where the decimal point stands in your note${choice}`
    }
    case 'unit':
      return question.isConverted
        ? `Could you tell us how you came to ${question.typedText}: is it what the gauge showed, or was it converted from another unit?`
        : `Could you check which scale ${question.typedText} was read from: ${unitWords[question.unit]}, or ${unitWords[question.otherUnit]}?`
    case 'day':
      if (question.text === null) return 'Could you check that each reading of these days stands under its own morning?'
      return `Could you check which morning the reading of ${question.text} ${unitWords[question.unit]} belongs to: ${say.day(question.typedFor)}, or ${say.day(question.otherDay)}?`
    case 'carried':
      return question.isTotal
        ? 'Could you tell us on which morning the gauge was last emptied before this reading? If the water gathered over several days, that is quite all right: we then keep it as the total of those days.'
        : `Could you tell us whether the gauge was read and emptied that morning, or whether its water was counted with the reading of ${say.day(question.endsOn)}? Either is quite all right.`
    case 'first-fill-lost':
      return 'If the inner tube was full and there was water in the outer cylinder too: does the amount hold every full tube that you poured out, as well as the last one?'
    case 'first-fill-only':
      return 'The amount is about what a full inner tube holds. Was there water in the outer cylinder as well, to be measured and added?'
    case 'false-zero':
      return 'Could you tell us whether the gauge was looked at that morning and was dry? A morning without a look is quite all right: we then keep it as "no reading".'
    case 'wetted':
      return `Could you tell us whether it rained, or whether the water may have come from dew, a sprinkler, a splash${question.maySnow ? ', melting snow' : ''} or something else?`
    case 'transposed': {
      const choice =
        question.originalText === null
          ? ''
          : `: ${question.swappedText}, or ${question.originalText} ${unitWords[question.unit]}`
      return question.isAsTyped
        ? `Could you check the order of the digits in your note${choice}?`
        : `Could you check the order of the digits before the amount was converted${choice}?`
    }
    case 'repeated':
      return `It is the same amount as on ${say.day(question.earlierDay)}, which can well happen. Could you check that each of the two mornings has its own note?`
    case 'other':
      return 'Could you look at your note once more, and tell us whether anything happened at the gauge: was it moved, blocked by leaves, tipped over, or read at another hour?'
  }
}

/** The letter: what was typed, what to look at, thanks. */
export function englishMessage(question: string, ask: WordingAsk, say: Figures): string {
  const { day, spanDays } = ask.finding
  const days = spanDays > 1 ? `${say.day(day - spanDays + 1)} to ${say.day(day)}` : say.day(day)
  const typed = `"${ask.typedText}" (${ask.finding.isTrace ? 'a trace' : unitWords[ask.typedUnit]})`
  return [
    `${ask.observerName === null ? 'Hello' : `Dear ${ask.observerName}`},`,
    `Thank you for your reading at ${ask.gaugeName} for ${days}. You typed ${typed}.`,
    question,
    'If what you typed is right, a short "yes" is all we need. Thank you for reading your gauge: every reading counts.',
  ].join('\n\n')
}
