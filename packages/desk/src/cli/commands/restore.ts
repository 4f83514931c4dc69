import type { Command } from 'commander'
import { usualLedger } from '../withLedger.ts'
import type { World } from '../world.ts'

export function addRestoreCommand(program: Command, world: World): void {
  program
    .command('restore')
    .description('put a backup in the place of the ledger; what was there is kept beside it')
    .argument('<from>', 'backup file')
    .option('--db <file>', 'ledger file', usualLedger)
    .option('--replace', 'the ledger exists: keep it under another name and put the backup in its place')
    .option('--json', 'answer as JSON')
    .action(async (from: string, options: { db: string; replace?: boolean; json?: boolean }) => {
      const { keptAs } = await world.ledgerFiles.restore(from, options.db, { replace: options.replace === true })
      await world.out.write(
        options.json
          ? `${JSON.stringify({ ledger: options.db, from, keptAs })}\n`
          : `${options.db} now holds ${from}.${keptAs === null ? '' : ` What was there is kept as ${keptAs}.`}\n`,
      )
    })
}
