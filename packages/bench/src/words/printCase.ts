/** One case for reading by eye: the figures that the words rest on, then the words in both languages. */
import { findingSentence, observerMessage, wordsFor } from '@gaugewright/desk'
import { type ExplanationKind, expectationLevels, type Language, type Unit } from '@gaugewright/science'
import { isoFromDay } from '../data/parseWideCsv.ts'
import { headOf, type JudgedCase } from './judgedCase.ts'
import { wordingAskOf } from './wordingAskOf.ts'

const languages: readonly Language[] = ['en', 'es']
/** Explanations with their own sentence, beside the one at the head and the one asked for. */
const leastOdds = 0.1

export function printCase(one: JudgedCase, kind: ExplanationKind, place: string): string {
  const { finding, explanations, unit } = one
  const say = (mm: number | null): string => (mm === null ? '-' : plain(mm, unit))
  const at = (level: number): number => finding.expectation.quantilesMm[expectationLevels.indexOf(level as 0.1)]!
  const lines = [
    `${place}  ${one.gaugeId}, ${isoFromDay(finding.day)}, typed "${one.typedText}" ${one.typedUnit}, stands ${percent(finding.standsOdds)}${one.label === null ? '' : `  [${one.label}]`}`,
    `  expected    ${say(at(0.1))} / ${say(at(0.5))} / ${say(at(0.9))} ${unit}, dry ${percent(finding.expectation.dryChance)}, tail ${percent(one.tailChance)}`,
    `  days        ${one.daysAround.map((day) => `${isoFromDay(day.day).slice(5)} ${say(day.reportedMm)} (${say(day.expectedP10Mm)}-${say(day.expectedP90Mm)})`).join('  ')}`,
    `  neighbours  ${one.neighbours.map(({ amountMm, distanceKm, day }) => `${say(amountMm)}${day === finding.day ? '' : day < finding.day ? '<' : '>'} (${distanceKm} km)`).join('  ')}`,
    `  odds        ${explanations
      .filter(({ odds }) => odds >= 0.01)
      .map((e) => `${e.kind} ${percent(e.odds)} -> ${say(e.impliedMm)}`)
      .join('  ')}`,
  ]
  for (const language of languages) {
    const ask = wordingAskOf(one, language)
    lines.push(`  ${language}  ${findingSentence(explanations, ask)}`)
    for (const explanation of explanations) {
      if (explanation.kind === headOf(one) || (explanation.odds < leastOdds && explanation.kind !== kind)) continue
      lines.push(`      ${explanation.kind}: ${wordsFor(explanation, ask).sentence}`)
    }
  }
  for (const language of languages)
    lines.push(`  ${language}> ${observerMessage(explanations, wordingAskOf(one, language)).replaceAll('\n\n', ' | ')}`)
  return lines.join('\n')
}

function plain(mm: number, unit: Unit): string {
  return unit === 'in' ? (mm / 25.4).toFixed(2) : mm.toFixed(1)
}

function percent(share: number): string {
  return `${(share * 100).toFixed(share < 0.1 || share > 0.9 ? 1 : 0)} %`
}
