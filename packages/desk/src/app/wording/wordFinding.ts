/** One door to the words, whatever the language. */
import type { Explanation, Finding } from '@gaugewright/science'
import { claimOf } from './claim.ts'
import { englishCannotTell, englishSentence } from './english.ts'
import { englishMessage, englishQuestion } from './englishLetter.ts'
import { figuresFor } from './figures.ts'
import { questionOf } from './question.ts'
import { spanishCannotTell, spanishSentence } from './spanish.ts'
import { spanishMessage, spanishQuestion } from './spanishLetter.ts'
import { standsExplanation, type WordingAsk, type Words } from './wordingAsk.ts'

/**
 * Words of one explanation, likely or not.
 * @param isFirst  of the likeliest one, which heads the finding
 */
export function wordsFor(explanation: Explanation, ask: WordingAsk, isFirst = false): Words {
  const say = figuresFor(ask.language, ask.unit, ask.typedUnit)
  const claim = claimOf(explanation, ask, isFirst)
  const question = questionOf(explanation, ask)
  switch (ask.language) {
    case 'en':
      return { sentence: englishSentence(claim, say), question: englishQuestion(question, say) }
    case 'es':
      return { sentence: spanishSentence(claim, say), question: spanishQuestion(question, say) }
  }
}

/** The sentences at the head of a finding: its likeliest explanation, or that nothing can be told. */
export function findingSentence(explanations: readonly Explanation[], ask: WordingAsk): string {
  if (!ask.finding.canTell)
    return ask.language === 'es' ? spanishCannotTell(ask.gaugeName) : englishCannotTell(ask.gaugeName)
  return wordsFor(likeliestOf(explanations, ask.finding), ask, true).sentence
}

/** Below these odds no mistake is asked after by name: the observer is asked for a second look. */
const LEAST_ASKED_ODDS = 0.1

/**
 * The kind letter to the observer. It asks about the likeliest mistake, since a letter is only sent in doubt; where none
 * is likely, or nothing can be told, it asks for a second look. It never holds a neighbour's amount or what they made
 * expected.
 */
export function observerMessage(explanations: readonly Explanation[], ask: WordingAsk): string {
  const mistakes = explanations.filter((explanation) => explanation.kind !== 'stands')
  const likeliest = likeliestOf(mistakes, ask.finding)
  const isNamed = ask.finding.canTell && likeliest.odds >= LEAST_ASKED_ODDS
  const { question } = wordsFor(isNamed ? likeliest : standsExplanation(ask.finding), ask)
  const say = figuresFor(ask.language, ask.unit)
  return ask.language === 'es' ? spanishMessage(question, ask, say) : englishMessage(question, ask, say)
}

function likeliestOf(explanations: readonly Explanation[], finding: Finding): Explanation {
  let best: Explanation | null = null
  for (const explanation of explanations) if (best === null || explanation.odds > best.odds) best = explanation
  return best ?? standsExplanation(finding)
}
