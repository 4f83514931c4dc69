/** Every template, in both languages, with its versions. */
import { type LetterTemplates, letterSteps } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { type Answer, answered } from './answer.ts'
import { usualLetters } from './letters/usualLetters.ts'
import { standing } from './people/journalBody.ts'
import { namesOfPeople } from './people/nameOf.ts'
import { firstNetwork } from './urgent/firstNetwork.ts'

export async function listLetters(
  ports: Pick<Ports, 'ledger' | 'access' | 'journal'>,
): Promise<Answer<LetterTemplates>> {
  const network = await firstNetwork(ports)
  if (!network.ok) return network
  const nameOf = await namesOfPeople(ports)
  const set = standing(await ports.journal.ofKinds(network.value.id, ['letter template']), 'letter template')
  return answered({
    templates: letterSteps.flatMap((step) =>
      (['en', 'es'] as const).map((language) => {
        const own = set.filter(({ body }) => body.step === step && body.language === language)
        const usual = usualLetters[language][step]
        const { subject, text } = own.at(-1)?.body ?? usual
        const versions = own.map(({ entry, body }) => ({
          id: entry.id,
          atUtc: entry.atUtc,
          by: nameOf(entry.by),
          subject: body.subject,
          text: body.text,
        }))
        return { step, language, subject, text, isUsual: subject === usual.subject && text === usual.text, versions }
      }),
    ),
  })
}
