import { readFile } from 'node:fs/promises'
import { letterSteps, previewLetterAskSchema, sendLetterAskSchema, setLetterAskSchema } from '@gaugewright/contract'
import type { Command } from 'commander'
import { atTheCommandLine } from '../../app/access/doer.ts'
import { listLetters } from '../../app/listLetters.ts'
import { previewLetter } from '../../app/previewLetter.ts'
import { sendLetter } from '../../app/sendLetter.ts'
import { setLetter } from '../../app/setLetter.ts'
import { firstNetwork } from '../../app/urgent/firstNetwork.ts'
import { answerWith, askFrom, ledgerCommand } from '../answerCommand.ts'
import { valueFrom } from '../commandStopped.ts'
import { plainTable } from '../plainTable.ts'
import { printContacts } from '../printOffers.ts'
import type { World } from '../world.ts'

export function addLetterCommand(program: Command, world: World): void {
  const letter = ledgerCommand(program, 'letter', 'letters to people, from templates that can be edited')
  letter
    .command('list', { isDefault: true })
    .description('the templates')
    .action((_own: object, command: Command) =>
      answerWith(world, command, listLetters, ({ templates }) => {
        const table = plainTable(['step', 'language', 'subject', 'versions'])
        for (const { step, language, subject, versions } of templates) {
          table.push([step, language, subject, String(versions.length)])
        }
        return `${table.toString()}\n`
      }),
    )
  letter
    .command('set')
    .description('a template from a text file: the first line is the subject, the rest after an empty line the letter')
    .argument('<step>', `one of: ${letterSteps.join(', ')}`)
    .argument('<language>', 'en or es')
    .argument('<file>', 'text in UTF-8')
    .action(async (step: string, language: string, file: string, _own: object, command: Command) => {
      const [subject = '', ...rest] = (await readFile(file, 'utf8')).replace(/\r\n/g, '\n').split('\n')
      const ask = askFrom(setLetterAskSchema, { step, language, subject, text: rest.join('\n') })
      await answerWith(
        world,
        command,
        (ports) => setLetter(ports, ask, atTheCommandLine),
        () => `The letter "${step}" (${language}) is set.\n`,
      )
    })
  for (const act of ['preview', 'send'] as const) {
    letter
      .command(act)
      .description(act === 'preview' ? 'a letter as it would go to one person' : 'send it through the outbox')
      .argument('<kind>', 'candidate or person')
      .argument('<id>', 'id of the offer or of the person')
      .argument('<step>', `one of: ${letterSteps.join(', ')}`)
      .option('--occasion <words>', 'what {occasion} stands for')
      .option('--by <name>', 'who signs it', 'coordinator')
      .action(
        async (
          kind: string,
          id: string,
          step: string,
          { occasion, by }: { occasion?: string; by: string },
          command: Command,
        ) => {
          const ask = askFrom(previewLetterAskSchema, { about: `${kind} ${id}`, step, occasion })
          if (act === 'preview') {
            return await answerWith(
              world,
              command,
              (ports) => previewLetter(ports, { ...ask, coordinator: by }),
              ({ to, subject, text }) =>
                `To: ${to ?? 'nobody: no mail address is known'}\nSubject: ${subject}\n\n${text}\n`,
            )
          }
          await answerWith(
            world,
            command,
            async (ports) => {
              const { subject, text } = valueFrom(await previewLetter(ports, { ...ask, coordinator: by }))
              const network = valueFrom(await firstNetwork(ports))
              const deskUrl = (await ports.outgoingSettings.reminders(network.id))?.settings.deskUrl ?? null
              const sent = askFrom(sendLetterAskSchema, { about: ask.about, step, id: ports.newId(), subject, text })
              return sendLetter(ports, { ...sent, deskUrl: deskUrl?.replace(/\/+$/, '') ?? null }, atTheCommandLine)
            },
            printContacts,
          )
        },
      )
  }
}
