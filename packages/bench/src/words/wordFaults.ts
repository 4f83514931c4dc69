/** What no wording of any case may do; counted over all cases, since nobody can read them all. */
import { findingSentence, observerMessage, wordsFor } from '@gaugewright/desk'
import { dateFromEpochDay, mmFromInches } from '@gaugewright/science'
import type { JudgedCase } from './judgedCase.ts'
import { wordingAskOf } from './wordingAskOf.ts'

const MOST_WORDS = 40

/** @returns one line per fault */
export function wordFaults(one: JudgedCase): string[] {
  const faults: string[] = []
  const [english, spanish] = [wordingAskOf(one, 'en'), wordingAskOf(one, 'es')]
  const texts = one.explanations.map((explanation) => [
    wordsFor(explanation, english).sentence,
    wordsFor(explanation, spanish).sentence,
  ])
  texts.push([findingSentence(one.explanations, english), findingSentence(one.explanations, spanish)])
  const letters = [observerMessage(one.explanations, english), observerMessage(one.explanations, spanish)]
  for (const [en, es] of [...texts, letters]) faults.push(...textFaults(en!, es!))
  for (const letter of letters)
    for (const figure of foreignFigures(letter, one)) faults.push(`the letter holds ${figure}: ${letter}`)
  return faults
}

/** Faults of one text in its two languages: what cannot be read, sentences too long, figures that differ. */
export function textFaults(en: string, es: string): string[] {
  const faults: string[] = []
  for (const text of [en, es]) {
    if (/undefined|NaN|null|\$\{|-\d+ |\(\(|\)\)| {2}|\.\./.test(text)) faults.push(`unreadable: ${text}`)
    for (const sentence of sentencesOf(text))
      if (wordCount(sentence) > MOST_WORDS) faults.push(`${wordCount(sentence)} words: ${sentence}`)
  }
  if (figuresOf(en) !== figuresOf(es)) faults.push(`figures differ: ${en} / ${es}`)
  return faults
}

/** Figures in order of size, whatever the decimal mark and the order of words. */
function figuresOf(text: string): string {
  return numbersIn(text)
    .sort((a, b) => a - b)
    .join(' ')
}

function numbersIn(text: string): number[] {
  return [...text.matchAll(/\d+(?:[.,]\d+)?/g)].map(([figure]) => Number(figure.replace(',', '.')))
}

function sentencesOf(text: string): string[] {
  return text.split(/(?<=[.?!])\s+|\n+/)
}

function wordCount(sentence: string): number {
  return sentence.split(/\s+/).filter((word) => /[\p{L}\p{N}]/u.test(word)).length
}

/** Figures of a letter that do not follow from what this gauge's observer typed, nor from the calendar. */
export function foreignFigures(
  letter: string,
  one: Pick<JudgedCase, 'gaugeName' | 'typedText' | 'explanations' | 'finding' | 'daysAround'>,
): number[] {
  const body = letter.replaceAll(one.gaugeName, '')
  const typed = Number(one.typedText.replace(',', '.'))
  const swapped = one.explanations.flatMap(({ detail }) =>
    detail?.kind === 'transposed' ? [Number(detail.originalText)] : [],
  )
  const ownMm = [one.finding.reportedMm, ...one.daysAround.flatMap((day) => day.reportedMm ?? []), ...swapped]
  const own = [typed, ...ownMm, ...ownMm.map((mm) => mm / mmFromInches(1))]
  const known = own.flatMap((value) => [value, value * 10, value * 100, value / 10, value / 100])
  const ends = one.explanations.flatMap(({ detail }) => (detail?.kind === 'carried' ? [detail.endsOn] : []))
  const calendar = [...one.daysAround.map(({ day }) => day), ...ends].map((day) => dateFromEpochDay(day).day)
  return numbersIn(body).filter(
    (figure) => !calendar.includes(figure) && !known.some((value) => Math.abs(value - figure) < 0.006),
  )
}
