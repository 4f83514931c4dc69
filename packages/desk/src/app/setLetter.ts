/** A new version of a template. What stands in braces must be known; earlier versions stay. */
import { type LetterTemplates, letterPlaceholders, type SetLetterAsk } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { type Doer, writeTrail } from './access/doer.ts'
import { type Answer, refused } from './answer.ts'
import { unknownPlaceholders } from './letters/fillLetter.ts'
import { listLetters } from './listLetters.ts'
import { newEntry, writer } from './people/writeEntry.ts'
import { firstNetwork } from './urgent/firstNetwork.ts'

export async function setLetter(
  ports: Pick<Ports, 'ledger' | 'access' | 'journal' | 'clock' | 'newId'>,
  ask: SetLetterAsk,
  doer: Doer,
): Promise<Answer<LetterTemplates>> {
  const network = await firstNetwork(ports)
  if (!network.ok) return network
  const unknown = unknownPlaceholders(`${ask.subject}\n${ask.text}`)
  if (unknown.length > 0) {
    return refused(
      'LETTER_PLACEHOLDER_UNKNOWN',
      unknown.map((name) => `{${name}}`).join(', '),
      `In braces may stand: ${letterPlaceholders.join(', ')}.`,
    )
  }
  await ports.journal.append([
    newEntry(ports, network.value.id, 'network', 'letter template', ask, { by: writer(doer) }),
  ])
  await writeTrail(ports, doer, { act: 'setLetter', subject: ask.step })
  return await listLetters(ports)
}
