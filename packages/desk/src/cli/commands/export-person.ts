import type { Command } from 'commander'
import { atTheCommandLine } from '../../app/access/doer.ts'
import { exportPerson } from '../../app/exportPerson.ts'
import { valueFrom } from '../commandStopped.ts'
import { usualLedger, withLedger } from '../withLedger.ts'
import type { World } from '../world.ts'

export function addExportPersonCommand(program: Command, world: World): void {
  program
    .command('export-person')
    .description('everything that is held on one person, as JSON')
    .argument('<person>', 'name, mail address or id')
    .option('--db <file>', 'ledger file', usualLedger)
    .action(async (personId: string, { db }: { db: string }) => {
      const held = await withLedger(world, db, { create: false }, async (ports) =>
        valueFrom(await exportPerson(ports, { personId }, atTheCommandLine)),
      )
      await world.out.write(`${JSON.stringify(held, null, 2)}\n`)
    })
}
