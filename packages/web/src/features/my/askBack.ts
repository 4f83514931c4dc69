/** The words with which the page asks back, and the answers it offers. What the alternatives are comes from the check. */
import type { WireEntryQuestion } from '@gaugewright/contract'
import type { Language, Unit } from '@gaugewright/science'
import { fill } from '../../words/fill.ts'
import type { MyWords } from '../../words/myWords.ts'
import { sayAmount, type TypedAmount } from './amountText.ts'
import { placeInGauge } from './placeInGauge.ts'

export interface AskBack {
  sentences: string[]
  /** The typed amount first. */
  choices: TypedAmount[]
}

export function askBack(
  typed: TypedAmount,
  question: WireEntryQuestion,
  unit: Unit,
  language: Language,
  words: MyWords,
): AskBack {
  const named = question.alternatives.flatMap(({ amountUm }) => (amountUm === null ? [] : [amountUm]))
  const others = named
    .filter((amountUm) => amountUm !== typed.amountUm)
    .map((amountUm) => ({ amountUm, isTrace: false }))
  const place = (amount: TypedAmount): string => placeInGauge(amount, unit, language, words)
  const sentences = [fill(words.ask.typed, { amount: sayAmount(typed, unit, language, words) })]
  const [other, third] = others
  if (other !== undefined && third !== undefined) {
    sentences.push(fill(words.ask.three, { place: place(typed), other: place(other), third: place(third) }))
  } else if (other !== undefined) sentences.push(fill(words.ask.two, { place: place(typed), other: place(other) }))
  for (const { kind, amountUm } of question.alternatives) {
    const look = words.ask.look[kind as keyof typeof words.ask.look]
    if (kind === 'first-fill-lost' || amountUm === null) sentences.push(look ?? words.ask.look.other)
  }
  return { sentences: [...new Set(sentences)], choices: [typed, ...others] }
}
