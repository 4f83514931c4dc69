import { chooseRemindersAskSchema, type Reminded, reminderSettingsSchema } from '@gaugewright/contract'
import type { Command } from 'commander'
import { chooseReminders } from '../../app/chooseReminders.ts'
import { readOutgoingSettings } from '../../app/readOutgoingSettings.ts'
import { remind } from '../../app/remind.ts'
import { setReminders } from '../../app/setReminders.ts'
import { valueFrom } from '../commandStopped.ts'
import { notValid } from '../notValid.ts'
import { plainTable } from '../plainTable.ts'
import { printOutgoingSettings } from '../printOutbox.ts'
import { usualLedger, withLedger } from '../withLedger.ts'
import type { World } from '../world.ts'

interface Common {
  db: string
  json?: boolean
}

export function addRemindCommand(program: Command, world: World): void {
  const reminders = program
    .command('remind')
    .description('remind those who have not read today, each once; the desk does so by itself at the hour that is set')
    .option('--db <file>', 'ledger file', usualLedger)
    .option('--json', 'answer as JSON')
  reminders
    .command('now', { isDefault: true })
    .description('queue the notes; run again, only for those who got none yet')
    .option('--dry-run', 'only tell whom, and who is left out and why')
    .option('--by <name>', 'who asks', 'coordinator')
    .action(async (own: { dryRun?: boolean; by: string }, command: Command) => {
      const { db, json } = command.optsWithGlobals<Common>()
      const answer = await withLedger(world, db, { create: false }, async (ports) =>
        valueFrom(await remind(ports, { isLook: own.dryRun === true, by: own.by })),
      )
      await world.out.write(json ? `${JSON.stringify(answer)}\n` : printReminded(answer))
    })
  addSet(reminders, world)
  addChoose(reminders, world)
}

function addSet(reminders: Command, world: World): void {
  reminders
    .command('set')
    .description('when to remind, or off; what is left out stays as it was')
    .argument('<time>', 'local time such as 10:00, or "off"')
    .option('--desk-url <url>', 'where people reach the desk: the links in a note begin with it')
    .option('--text-url <url>', 'where a service takes text messages, or "none"')
    .option('--by <name>', 'who sets it', 'coordinator')
    .action(async (time: string, own: { deskUrl?: string; textUrl?: string; by: string }, command: Command) => {
      const { db, json } = command.optsWithGlobals<Common>()
      const answer = await withLedger(world, db, { create: false }, async (ports) => {
        const before = valueFrom(await readOutgoingSettings(ports)).reminders?.settings
        const isOn = time !== 'off'
        const settings = reminderSettingsSchema.safeParse({
          isOn,
          atTime: isOn ? time : (before?.atTime ?? '10:00'),
          deskUrl: own.deskUrl ?? before?.deskUrl ?? null,
          textUrl: own.textUrl === 'none' ? null : (own.textUrl ?? before?.textUrl ?? null),
        })
        if (!settings.success) throw notValid(settings.error.issues[0])
        return valueFrom(await setReminders(ports, { settings: settings.data, by: own.by }))
      })
      await world.out.write(json ? `${JSON.stringify(answer)}\n` : printOutgoingSettings(answer))
    })
}

function addChoose(reminders: Command, world: World): void {
  reminders
    .command('choose')
    .description('write down whether and how a person wants to be reminded')
    .argument('<person>', 'name, mail address or id')
    .argument('<way>', 'mail, text or stop')
    .option('--phone <number>', 'for text messages, with its country code: +15550100123')
    .option('--by <name>', 'who writes it down', 'coordinator')
    .action(async (personId: string, way: string, own: { phone?: string; by: string }, command: Command) => {
      const { db, json } = command.optsWithGlobals<Common>()
      const wants = way !== 'stop'
      const given = { personId, wants, way: wants ? way : 'mail', phone: own.phone ?? null, by: own.by }
      const ask = chooseRemindersAskSchema.safeParse(given)
      if (!ask.success) throw notValid(ask.error.issues[0])
      const choice = await withLedger(world, db, { create: false }, async (ports) =>
        valueFrom(await chooseReminders(ports, ask.data)),
      )
      const says = choice.wants ? `is reminded by ${choice.way}` : 'gets no reminders'
      await world.out.write(json ? `${JSON.stringify(choice)}\n` : `${personId} ${says}.\n`)
    })
}

function printReminded({ day, isQueued, remind: whom, leftOut }: Reminded): string {
  const count = whom.length === 1 ? '1 person' : `${whom.length} people`
  const head = isQueued ? `${day}: a note to ${count} waits in the outbox.` : `${day}: ${count} would be reminded.`
  const table = plainTable(['who', 'by', 'to', 'not read'])
  for (const { name, way, to, gauges } of whom) table.push([name, way, to, gauges.join(', ')])
  const why = new Map<string, number>()
  for (const one of leftOut) why.set(one.why, (why.get(one.why) ?? 0) + 1)
  const rest = [...why].map(([reason, left]) => `${left} ${reason}`).join(', ')
  return `${head}\n${whom.length === 0 ? '' : `${table.toString()}\n`}${rest === '' ? '' : `Left out: ${rest}.\n`}`
}
