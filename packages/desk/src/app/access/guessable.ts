/** Whether a password is among those that are tried first: lists of used passwords, words, names, dates and patterns. */
import { zxcvbn, zxcvbnOptions } from '@zxcvbn-ts/core'
import { adjacencyGraphs, dictionary } from '@zxcvbn-ts/language-common'

zxcvbnOptions.setOptions({ dictionary: { ...dictionary }, graphs: adjacencyGraphs })

/** Of 0 to 4: 3 needs more than 10^8 guesses, too many for a door that limits them. */
const LEAST_SCORE = 3

/** @param about  words that anyone would try for this person: name, address, network */
export function isGuessable(password: string, about: readonly string[]): boolean {
  return zxcvbn(password, ['gaugewright', ...about]).score < LEAST_SCORE
}
