import { outgoingStates, type ReadOutboxAsk, type SettleOutgoingAsk } from '@gaugewright/contract'
import { type Command, InvalidArgumentError } from 'commander'
import { readOutbox } from '../../app/readOutbox.ts'
import { settleOutgoing } from '../../app/settleOutgoing.ts'
import { valueFrom } from '../commandStopped.ts'
import { wholeNumberOption } from '../dayOption.ts'
import { printOutbox, printOutgoing } from '../printOutbox.ts'
import { usualLedger, withLedger } from '../withLedger.ts'
import type { World } from '../world.ts'

interface Common {
  db: string
  json?: boolean
}

const acts = {
  retry: 'send a message again that failed, was discarded or is in doubt; what is in doubt may then arrive twice',
  discard: 'let nobody send a message',
  restore: 'take a discarding back',
} as const

export function addOutboxCommand(program: Command, world: World): void {
  const outbox = program
    .command('outbox')
    .description('messages on their way out: what waits, what failed, what is in doubt')
    .option('--db <file>', 'ledger file', usualLedger)
    .option('--json', 'answer as JSON')
  outbox
    .command('list', { isDefault: true })
    .description('newest first; those that need somebody, or those of one state')
    .option('--state <state>', `one of: ${outgoingStates.join(', ')}`, stateFrom)
    .option('--limit <count>', 'messages', wholeNumberOption(1, 500), 50)
    .action(async (own: ReadOutboxAsk, command: Command) => {
      const { db, json } = command.optsWithGlobals<Common>()
      const answer = await withLedger(world, db, { create: false }, async (ports) =>
        valueFrom(await readOutbox(ports, own)),
      )
      await world.out.write(json ? `${JSON.stringify(answer)}\n` : printOutbox(answer))
    })
  for (const [act, description] of Object.entries(acts) as [SettleOutgoingAsk['act'], string][]) {
    outbox
      .command(act)
      .description(description)
      .argument('<message>', 'id of the message')
      .option('--by <name>', 'who does it', 'coordinator')
      .action(async (id: string, own: { by: string }, command: Command) => {
        const { db, json } = command.optsWithGlobals<Common>()
        const row = await withLedger(world, db, { create: false }, async (ports) =>
          valueFrom(await settleOutgoing(ports, { id, act, by: own.by })),
        )
        await world.out.write(json ? `${JSON.stringify(row)}\n` : printOutgoing(row))
      })
  }
}

function stateFrom(text: string): ReadOutboxAsk['state'] {
  const state = outgoingStates.find((known) => known === text)
  if (state === undefined) throw new InvalidArgumentError(`Give one of: ${outgoingStates.join(', ')}.`)
  return state
}
