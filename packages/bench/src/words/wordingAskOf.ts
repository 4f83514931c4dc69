import type { WordingAsk } from '@gaugewright/desk'
import type { Language } from '@gaugewright/science'
import type { JudgedCase } from './judgedCase.ts'

/** A case as the desk words it. Its observer has an invented name. */
export function wordingAskOf(one: JudgedCase, language: Language): WordingAsk {
  const { unit, gaugeName, typedText, typedUnit, finding, expectedSpans, isSnowSeason } = one
  const observerName = 'Ines Holt'
  return { language, unit, gaugeName, observerName, typedText, typedUnit, finding, expectedSpans, isSnowSeason }
}
