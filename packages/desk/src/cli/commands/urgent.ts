import { passOnForms, type UrgentNow, urgentNowAskSchema } from '@gaugewright/contract'
import { type Command, InvalidArgumentError, Option } from 'commander'
import { closeUrgent } from '../../app/closeUrgent.ts'
import { codedUrgent } from '../../app/codedUrgent.ts'
import { markSeen } from '../../app/markSeen.ts'
import { passOn } from '../../app/passOn.ts'
import { undoUrgent } from '../../app/undoUrgent.ts'
import { urgentNow } from '../../app/urgentNow.ts'
import type { Ports } from '../../ports/ports.ts'
import { valueFrom } from '../commandStopped.ts'
import { printUrgent } from '../printUrgent.ts'
import { usualLedger, withLedger } from '../withLedger.ts'
import type { World } from '../world.ts'

interface Common {
  db: string
  json?: boolean
}

type PassOnForm = (typeof passOnForms)[number]

export function addUrgentCommand(program: Command, world: World): void {
  const urgent = program
    .command('urgent')
    .description('urgent reports, what would change a warning most first: hail, torrents, flooding, wind, snow')
    .option('--db <file>', 'ledger file', usualLedger)
    .option('--json', 'answer as JSON')
    .option('--hours <number>', 'how far back', hoursFrom, 24)
    .action(async (options: Common & { hours: number }) => {
      await tell(world, options, async (ports) => valueFrom(await urgentNow(ports, { hours: options.hours })))
    })
  urgent
    .command('code')
    .description('the coded text of a report, to look at and to copy; nothing is recorded')
    .argument('<report>', 'id of the report')
    .addOption(formOption())
    .action(async (reportId: string, own: { as: PassOnForm }, command: Command) => {
      const options = command.optsWithGlobals<Common>()
      const coded = await withLedger(world, options.db, { create: false }, async (ports) =>
        valueFrom(await codedUrgent(ports, { reportId, form: own.as })),
      )
      await world.out.write(options.json ? `${JSON.stringify(coded)}\n` : coded.text)
    })
  urgent
    .command('seen')
    .description('note that somebody at the desk has looked at a report')
    .argument('<report>', 'id of the report')
    .addOption(byOption())
    .action(async (reportId: string, { by }: { by: string }, command: Command) => {
      await tell(world, command.optsWithGlobals(), async (ports) => valueFrom(await markSeen(ports, { reportId, by })))
    })
  urgent
    .command('pass-on')
    .description('pass a report on to a destination that the office has set; without one, note that it was copied')
    .argument('<report>', 'id of the report')
    .option('--to <destination>', 'name of the destination')
    .addOption(formOption())
    .addOption(byOption())
    .action(async (reportId: string, own: { to?: string; as: PassOnForm; by: string }, command: Command) => {
      const ask = { reportId, by: own.by, form: own.as, destination: own.to ?? null }
      await tell(world, command.optsWithGlobals(), async (ports) => valueFrom(await passOn(ports, ask)))
    })
  urgent
    .command('close')
    .description('note that a report needs nothing more')
    .argument('<report>', 'id of the report')
    .requiredOption('--why <text>', 'why: kept beside it')
    .addOption(byOption())
    .action(async (reportId: string, { why, by }: { why: string; by: string }, command: Command) => {
      await tell(world, command.optsWithGlobals(), async (ports) =>
        valueFrom(await closeUrgent(ports, { reportId, by, why })),
      )
    })
  urgent
    .command('undo')
    .description('take back a look, a closing, or that a text was copied; both stay')
    .argument('<event>', 'id of the event, as --json shows it')
    .addOption(byOption())
    .action(async (eventId: string, { by }: { by: string }, command: Command) => {
      await tell(world, command.optsWithGlobals(), async (ports) => valueFrom(await undoUrgent(ports, { eventId, by })))
    })
}

async function tell(world: World, options: Common, work: (ports: Ports) => Promise<UrgentNow>): Promise<void> {
  const now = await withLedger(world, options.db, { create: false }, work)
  await world.out.write(options.json ? `${JSON.stringify(now)}\n` : printUrgent(now))
}

function byOption(): Option {
  return new Option('--by <name>', 'who does it').default('coordinator')
}

function formOption(): Option {
  return new Option('--as <form>', 'form of the text').choices([...passOnForms]).default('storm report')
}

function hoursFrom(text: string): number {
  const read = urgentNowAskSchema.safeParse({ hours: text })
  if (!read.success) throw new InvalidArgumentError('Give hours from 1 to 8784.')
  return read.data.hours
}
