import { addContactAskSchema, contactsAskSchema, contactWays, withdrawContactAskSchema } from '@gaugewright/contract'
import type { Command } from 'commander'
import { atTheCommandLine } from '../../app/access/doer.ts'
import { addContact } from '../../app/addContact.ts'
import { listContacts } from '../../app/listContacts.ts'
import { withdrawContact } from '../../app/withdrawContact.ts'
import { answerWith, askFrom, ledgerCommand } from '../answerCommand.ts'
import { printContacts } from '../printOffers.ts'
import type { World } from '../world.ts'

export function addContactCommand(program: Command, world: World): void {
  const contact = ledgerCommand(
    program,
    'contact',
    'what was exchanged with a person: letters, calls, visits, mails, notes',
  )
  contact
    .command('list', { isDefault: true })
    .description('newest first')
    .argument('<kind>', 'candidate or person')
    .argument('<id>', 'id of the offer or of the person')
    .action((kind: string, id: string, _own: object, command: Command) =>
      answerWith(
        world,
        command,
        async (ports) => listContacts(ports, askFrom(contactsAskSchema, { about: `${kind} ${id}` })),
        printContacts,
      ),
    )
  contact
    .command('add')
    .description('note a call, a visit, a mail that came, or anything else')
    .argument('<kind>', 'candidate or person')
    .argument('<id>', 'id of the offer or of the person')
    .argument('<way>', `one of: ${contactWays.filter((way) => way !== 'letter').join(', ')}`)
    .argument('<words>', 'what was said')
    .action((kind: string, id: string, way: string, text: string, _own: object, command: Command) =>
      answerWith(
        world,
        command,
        async (ports) =>
          addContact(ports, askFrom(addContactAskSchema, { about: `${kind} ${id}`, way, text }), atTheCommandLine),
        printContacts,
      ),
    )
  contact
    .command('withdraw')
    .description('takes a line back, or with --undo puts it back')
    .argument('<kind>', 'candidate or person')
    .argument('<id>', 'id of the offer or of the person')
    .argument('<contact>', 'id of the line')
    .option('--undo', 'put it back', false)
    .action((kind: string, id: string, contactId: string, { undo }: { undo: boolean }, command: Command) =>
      answerWith(
        world,
        command,
        async (ports) => {
          const ask = askFrom(withdrawContactAskSchema, { about: `${kind} ${id}`, contactId, undo })
          return withdrawContact(ports, ask, atTheCommandLine)
        },
        printContacts,
      ),
    )
}
