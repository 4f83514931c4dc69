import type { Command } from 'commander'
import { usualLedger } from '../withLedger.ts'
import type { World } from '../world.ts'

export function addBackupCommand(program: Command, world: World): void {
  program
    .command('backup')
    .description('copy the ledger to a file, even while the desk is open')
    .argument('<to>', 'file to write; must not exist yet')
    .option('--db <file>', 'ledger file', usualLedger)
    .option('--json', 'answer as JSON')
    .action(async (to: string, options: { db: string; json?: boolean }) => {
      const { bytes } = await world.ledgerFiles.backup(options.db, to)
      await world.out.write(
        options.json
          ? `${JSON.stringify({ ledger: options.db, backup: to, bytes })}\n`
          : `${options.db} copied to ${to} (${bytes} bytes), checked and whole.\n`,
      )
    })
}
