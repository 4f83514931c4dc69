import type { LetterStep } from '@gaugewright/contract'
import type { Ports } from '../../ports/ports.ts'
import { standing } from '../people/journalBody.ts'
import { usualLetters } from './usualLetters.ts'

/** The text in force for a step: the coordinator's last, else the one that came with the desk. */
export async function letterTemplate(
  ports: Pick<Ports, 'journal'>,
  networkId: string,
  step: LetterStep,
  language: 'en' | 'es',
): Promise<{ subject: string; text: string }> {
  const set = standing(await ports.journal.ofKinds(networkId, ['letter template']), 'letter template')
  const own = set.filter(({ body }) => body.step === step && body.language === language).at(-1)
  return own?.body ?? usualLetters[language][step]
}
