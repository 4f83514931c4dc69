import type { Command } from 'commander'
import { findPerson } from '../../app/access/findPerson.ts'
import { auditTrail } from '../../app/auditTrail.ts'
import { valueFrom } from '../commandStopped.ts'
import { wholeNumberOption } from '../dayOption.ts'
import { plainTable } from '../plainTable.ts'
import { usualLedger, withLedger } from '../withLedger.ts'
import type { World } from '../world.ts'

interface Options {
  db: string
  json?: boolean
  limit: number
  before?: string
  person?: string
}

export function addAuditCommand(program: Command, world: World): void {
  program
    .command('audit')
    .description('who did what, newest first; nothing is ever taken out of it')
    .option('--db <file>', 'ledger file', usualLedger)
    .option('--limit <count>', 'entries', wholeNumberOption(1, 1000), 100)
    .option('--before <entry>', 'only entries before this one (its id)')
    .option('--person <person>', 'done by or to this person: name, mail address or id')
    .option('--json', 'answer as JSON')
    .action(async ({ db, json, limit, before, person }: Options) => {
      const trail = await withLedger(world, db, { create: false }, async (ports) => {
        const personId = person === undefined ? undefined : valueFrom(await findPerson(ports, person)).id
        return valueFrom(await auditTrail(ports, { limit, before, personId }))
      })
      if (json) return await world.out.write(`${JSON.stringify(trail)}\n`)
      const table = plainTable(['when (UTC)', 'who', 'from', 'what', 'to what', 'result'])
      for (const { atUtc, name, personId, door, act, subject, result } of trail.entries) {
        const who = name ?? (personId === null ? '-' : 'a forgotten person')
        table.push([atUtc.slice(0, 19).replace('T', ' '), who, door, act, subject ?? '-', result])
      }
      const last = trail.entries.at(-1)
      const more = trail.more && last !== undefined ? `Older ones: --before ${last.id}\n` : ''
      await world.out.write(trail.entries.length === 0 ? 'Nothing was done yet.\n' : `${table.toString()}\n${more}`)
    })
}
