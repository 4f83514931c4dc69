import { mailSettingsSchema, sendTestMailAskSchema } from '@gaugewright/contract'
import type { Command } from 'commander'
import { readOutgoingSettings } from '../../app/readOutgoingSettings.ts'
import { sendTestMail } from '../../app/sendTestMail.ts'
import { setMail } from '../../app/setMail.ts'
import { valueFrom } from '../commandStopped.ts'
import { notValid } from '../notValid.ts'
import { printOutgoingSettings } from '../printOutbox.ts'
import { usualLedger, withLedger } from '../withLedger.ts'
import type { World } from '../world.ts'

interface Common {
  db: string
  json?: boolean
}

interface SetWords {
  port: string
  security: string
  user?: string
  from: string
  fromName: string
  by: string
}

export function addMailCommand(program: Command, world: World): void {
  const mail = program
    .command('mail')
    .description('how mail goes out; nothing is sent until it is set, and the password stays in the environment')
    .option('--db <file>', 'ledger file', usualLedger)
    .option('--json', 'answer as JSON')
  const answerWith = async (command: Command, use: Parameters<typeof withLedger>[3]): Promise<void> => {
    const { db, json } = command.optsWithGlobals<Common>()
    await withLedger(world, db, { create: false }, async (ports) => {
      await use(ports)
      const answer = valueFrom(await readOutgoingSettings(ports))
      await world.out.write(json ? `${JSON.stringify(answer)}\n` : printOutgoingSettings(answer))
    })
  }
  mail
    .command('show', { isDefault: true })
    .description('what is set')
    .action((_own: object, command: Command) => answerWith(command, async () => undefined))
  mail
    .command('set')
    .description('send mail by this server; its password is read from GAUGEWRIGHT_SMTP_PASSWORD when the desk opens')
    .argument('<host>', 'name of the mail server')
    .requiredOption('--from <address>', 'mail address from which mail comes')
    .option('--from-name <name>', 'name beside it', '')
    .option('--port <number>', 'port', '587')
    .option('--security <kind>', 'starttls, tls, or none for a server on this computer', 'starttls')
    .option('--user <name>', 'who signs in at the mail server')
    .option('--by <name>', 'who sets it', 'coordinator')
    .action((host: string, { by, port, user, ...own }: SetWords, command: Command) =>
      answerWith(command, async (ports) => {
        const settings = mailSettingsSchema.safeParse({ host, port: Number(port), user: user ?? null, ...own })
        if (!settings.success) throw notValid(settings.error.issues[0])
        valueFrom(await setMail(ports, { settings: settings.data, by }))
      }),
    )
  mail
    .command('off')
    .description('send no mail: it waits from now on')
    .option('--by <name>', 'who sets it', 'coordinator')
    .action(({ by }: { by: string }, command: Command) =>
      answerWith(command, async (ports) => void valueFrom(await setMail(ports, { settings: null, by }))),
    )
  mail
    .command('test')
    .description('queue one mail to this address; the desk sends it while it is open, and "outbox" tells how it went')
    .argument('<address>', 'mail address')
    .option('--by <name>', 'who asks', 'coordinator')
    .action((to: string, { by }: { by: string }, command: Command) =>
      answerWith(command, async (ports) => {
        const ask = sendTestMailAskSchema.safeParse({ to, by })
        if (!ask.success) throw notValid(ask.error.issues[0])
        valueFrom(await sendTestMail(ports, ask.data))
      }),
    )
}
