/** One door to the words, whatever the language. */
import type { Explanation, Finding } from '@gaugewright/science'
import { englishCannotTell, englishMessage, englishWords } from './english.ts'
import { spanishCannotTell, spanishMessage, spanishWords } from './spanish.ts'
import { standsExplanation, type WordingAsk, type Words } from './wordingAsk.ts'

/** Words of one explanation, likely or not. */
export function wordsFor(explanation: Explanation, ask: WordingAsk): Words {
  switch (ask.language) {
    case 'en':
      return englishWords(explanation, ask)
    case 'es':
      return spanishWords(explanation, ask)
  }
}

/** The sentence at the head of a finding: its likeliest explanation, or that nothing can be told. */
export function findingSentence(explanations: readonly Explanation[], ask: WordingAsk): string {
  if (!ask.finding.canTell) return ask.language === 'es' ? spanishCannotTell(ask) : englishCannotTell(ask)
  return wordsFor(likeliestOf(explanations, ask.finding), ask).sentence
}

/**
 * The kind letter to the observer. It asks about the likeliest mistake, since a letter is only sent in doubt; where
 * nothing can be told it asks for a second look. It never holds a neighbour's amount or what they made expected.
 */
export function observerMessage(explanations: readonly Explanation[], ask: WordingAsk): string {
  const mistakes = explanations.filter((explanation) => explanation.kind !== 'stands')
  const asked = ask.finding.canTell ? likeliestOf(mistakes, ask.finding) : standsExplanation(ask.finding)
  const { question } = wordsFor(asked, ask)
  return ask.language === 'es' ? spanishMessage(question, ask) : englishMessage(question, ask)
}

function likeliestOf(explanations: readonly Explanation[], finding: Finding): Explanation {
  let best: Explanation | null = null
  for (const explanation of explanations) if (best === null || explanation.odds > best.odds) best = explanation
  return best ?? standsExplanation(finding)
}
