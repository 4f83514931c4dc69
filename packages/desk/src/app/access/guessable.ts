/** Whether a password is among those that are tried first: lists of used passwords, words, names, dates and patterns. */
import { zxcvbn, zxcvbnOptions } from '@zxcvbn-ts/core'
import { adjacencyGraphs, dictionary } from '@zxcvbn-ts/language-common'

zxcvbnOptions.setOptions({ dictionary: { ...dictionary }, graphs: adjacencyGraphs })

/** Enough even for somebody who holds the file: at sixty guesses a second and core, five years. */
const LEAST_GUESSES_LOG10 = 10

/** @param about  words that anyone would try for this person: name, address, network */
export function isGuessable(password: string, about: readonly string[]): boolean {
  return zxcvbn(password, ['gaugewright', ...about]).guessesLog10 < LEAST_GUESSES_LOG10
}
