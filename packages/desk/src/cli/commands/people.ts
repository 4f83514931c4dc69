import {
  addPersonAskSchema,
  changePersonAskSchema,
  type Role,
  roleSchema,
  setPasswordAskSchema,
} from '@gaugewright/contract'
import { type Command, InvalidArgumentError } from 'commander'
import { atTheCommandLine } from '../../app/access/doer.ts'
import { addPerson } from '../../app/addPerson.ts'
import { refused } from '../../app/answer.ts'
import { changePerson } from '../../app/changePerson.ts'
import { forgetPerson } from '../../app/forgetPerson.ts'
import { listPeople } from '../../app/listPeople.ts'
import { setPassword } from '../../app/setPassword.ts'
import { setRole } from '../../app/setRole.ts'
import { CommandStopped, valueFrom } from '../commandStopped.ts'
import { addPeopleFiles } from '../peopleFiles.ts'
import { printPeople } from '../printPeople.ts'
import { usualLedger, withLedger } from '../withLedger.ts'
import type { World } from '../world.ts'

interface Common {
  db: string
  json?: boolean
}

type Use = Parameters<typeof withLedger>[3]

export function addPeopleCommand(program: Command, world: World): void {
  const people = program
    .command('people')
    .description('the people of the network and what each may do: coordinator, colleague, viewer, observer')
    .option('--db <file>', 'ledger file', usualLedger)
    .option('--json', 'answer as JSON')
  const answerWith = async (command: Command, use: Use): Promise<void> => {
    const options = command.optsWithGlobals<Common>()
    await withLedger(world, options.db, { create: false }, async (ports) => {
      await use(ports)
      const answer = valueFrom(await listPeople(ports))
      await world.out.write(options.json ? `${JSON.stringify(answer)}\n` : await printPeople(ports, answer))
    })
  }
  people
    .command('list', { isDefault: true })
    .description('everybody, by name')
    .action((_options: object, command: Command) => answerWith(command, async () => undefined))
  people
    .command('add')
    .description('add a person; observers sign in by links that are mailed to them, the others with a password')
    .argument('<name>', 'name')
    .requiredOption('--role <role>', 'coordinator, colleague, viewer or observer', roleFrom)
    .option('--mail <address>', 'mail address: needed to sign in')
    .option('--language <en|es>', 'language of mails and pages', 'en')
    .option('--gauges <codes>', 'gauges that the person reads, separated by commas', gaugesFrom)
    .action((name: string, own: { role: Role; mail?: string; language: string; gauges?: string[] }, command: Command) =>
      answerWith(command, async (ports) => {
        const ask = addPersonAskSchema.safeParse({ name, ...own })
        if (!ask.success) throw notValid(ask.error.issues[0])
        valueFrom(await addPerson(ports, ask.data, atTheCommandLine))
      }),
    )
  addPeopleFiles(people, world)
  people
    .command('role')
    .description('give a person another role, or other gauges')
    .argument('<person>', 'name, mail address or id')
    .argument('<role>', 'coordinator, colleague, viewer or observer', roleFrom)
    .option('--gauges <codes>', 'gauges that the person reads from now on, separated by commas', gaugesFrom)
    .action((personId: string, role: Role, own: { gauges?: string[] }, command: Command) =>
      answerWith(command, async (ports) => {
        const gauges = own.gauges === undefined ? {} : { gauges: own.gauges }
        valueFrom(await setRole(ports, { personId, role, ...gauges }, atTheCommandLine))
      }),
    )
  people
    .command('change')
    .description('change the name, mail address, language or telephone number of a person')
    .argument('<person>', 'name, mail address or id, as it is now')
    .option('--name <name>', 'new name')
    .option('--mail <address>', 'new mail address; "none" takes it away')
    .option('--language <en|es>', 'language of mails and pages')
    .option('--phone <number>', 'number for text messages, with its country code; "none" takes it away')
    .action((personId: string, own: Record<'name' | 'mail' | 'language' | 'phone', string>, command: Command) =>
      answerWith(command, async (ports) => {
        const given = Object.entries(own).map(([key, text]) => [key, text === 'none' && key !== 'name' ? null : text])
        if (given.length === 0) throw notValid({ path: ['change'], message: 'nothing to change was given' })
        const ask = changePersonAskSchema.safeParse({ personId, ...Object.fromEntries(given) })
        if (!ask.success) throw notValid(ask.error.issues[0])
        valueFrom(await changePerson(ports, ask.data, atTheCommandLine))
      }),
    )
  people
    .command('password')
    .description('give a person a password, typed unseen or read as one line from standard input')
    .argument('<person>', 'name, mail address or id')
    .action((personId: string, _own: object, command: Command) =>
      answerWith(command, async (ports) => {
        const password = await world.askSecret(`Password for ${personId}: `)
        const ask = setPasswordAskSchema.safeParse({ personId, password: password ?? '' })
        if (!ask.success) throw notValid(ask.error.issues[0])
        valueFrom(await setPassword(ports, ask.data, null, atTheCommandLine))
      }),
    )
  people
    .command('forget')
    .description('erase a person: readings and decisions stay, without the name; there is no way back')
    .argument('<person>', 'name, mail address or id')
    .requiredOption('--yes', 'yes, erase')
    .action((personId: string, _own: object, command: Command) =>
      answerWith(command, async (ports) => {
        valueFrom(await forgetPerson(ports, { personId }, atTheCommandLine))
      }),
    )
}

function roleFrom(text: string): Role {
  const role = roleSchema.safeParse(text)
  if (role.success) return role.data
  throw new InvalidArgumentError('Give coordinator, colleague, viewer or observer.')
}

function gaugesFrom(text: string): string[] {
  return text.split(',').flatMap((code) => (code.trim() === '' ? [] : [code.trim()]))
}

function notValid(issue: { path: PropertyKey[]; message: string } | undefined): CommandStopped {
  const seen = `${issue?.path.join('.') ?? 'what was given'}: ${issue?.message ?? 'not readable'}`
  return new CommandStopped(refused('ASK_NOT_VALID', seen, 'See "gaugewright people --help".').problem, 2)
}
