import { addKeyAskSchema, type KeyScope, type Keys, keyScopes } from '@gaugewright/contract'
import { type Command, InvalidArgumentError } from 'commander'
import { atTheCommandLine } from '../../app/access/doer.ts'
import { addKey } from '../../app/addKey.ts'
import { listKeys } from '../../app/listKeys.ts'
import { revokeKey } from '../../app/revokeKey.ts'
import { valueFrom } from '../commandStopped.ts'
import { plainTable } from '../plainTable.ts'
import { usualLedger, withLedger } from '../withLedger.ts'
import type { World } from '../world.ts'

interface Common {
  db: string
  json?: boolean
}

export function addKeyCommand(program: Command, world: World): void {
  const key = program
    .command('key')
    .description('keys for programs that send readings or read what is accepted')
    .option('--db <file>', 'ledger file', usualLedger)
    .option('--json', 'answer as JSON')
  key
    .command('list', { isDefault: true })
    .description('all keys, revoked ones too')
    .action(async (_options: object, command: Command) => {
      const { db, json } = command.optsWithGlobals<Common>()
      await withLedger(world, db, { create: false }, async (ports) => {
        const answer = valueFrom(await listKeys(ports))
        await world.out.write(json ? `${JSON.stringify(answer)}\n` : printKeys(answer))
      })
    })
  key
    .command('add')
    .description('make a key; it is shown this once')
    .argument('<sender>', 'who will use it', senderFrom)
    .option('--scopes <scopes>', `what it opens, separated by commas: ${keyScopes.join(', ')}`, scopesFrom, ['send'])
    .action(async (sender: string, own: { scopes: KeyScope[] }, command: Command) => {
      const { db, json } = command.optsWithGlobals<Common>()
      await withLedger(world, db, { create: false }, async (ports) => {
        const made = valueFrom(await addKey(ports, { sender, scopes: own.scopes }, atTheCommandLine))
        if (json) return await world.out.write(`${JSON.stringify(made)}\n`)
        await world.out.write(`${made.secret}\n`)
        await world.err.write(`Shown this once: keep it where only ${sender} reads it. Id ${made.key.id}.\n`)
      })
    })
  key
    .command('revoke')
    .description('revoke a key: it opens nothing from now on')
    .argument('<id>', 'id of the key, as the list shows it')
    .action(async (id: string, _own: object, command: Command) => {
      const { db, json } = command.optsWithGlobals<Common>()
      await withLedger(world, db, { create: false }, async (ports) => {
        const answer = valueFrom(await revokeKey(ports, { id }, atTheCommandLine))
        await world.out.write(json ? `${JSON.stringify(answer)}\n` : printKeys(answer))
      })
    })
}

function printKeys({ keys }: Keys): string {
  if (keys.length === 0) return 'No keys yet: gaugewright key add SENDER\n'
  const table = plainTable(['id', 'sender', 'begins', 'opens', 'made', 'last used', 'revoked'])
  for (const { id, sender, start, scopes, madeAtUtc, lastUsedOn, revokedAtUtc } of keys) {
    table.push([
      id,
      sender,
      `${start}…`,
      scopes.join(', '),
      madeAtUtc.slice(0, 10),
      lastUsedOn ?? 'never',
      revokedAtUtc?.slice(0, 10) ?? '',
    ])
  }
  return `${table.toString()}\n`
}

function senderFrom(text: string): string {
  const read = addKeyAskSchema.shape.sender.safeParse(text)
  if (read.success) return read.data
  throw new InvalidArgumentError('Give a name of 1 to 80 characters.')
}

function scopesFrom(text: string): KeyScope[] {
  const read = addKeyAskSchema.shape.scopes.safeParse(text.split(',').map((word) => word.trim()))
  if (read.success) return read.data
  throw new InvalidArgumentError(`Give one or more of ${keyScopes.join(', ')}, separated by commas.`)
}
