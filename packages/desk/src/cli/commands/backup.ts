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
      const { bytes, photos, photosLost } = await world.ledgerFiles.backup(options.db, to)
      const withPhotos = photos === 0 ? '' : ` ${photos} photos lie beside it in ${to}.photos: keep both together.`
      const without = photosLost === 0 ? '' : ` ${photosLost} photos are lost: "gaugewright doctor" names them.`
      await world.out.write(
        options.json
          ? `${JSON.stringify({ ledger: options.db, backup: to, bytes, photos, photosLost })}\n`
          : `${options.db} copied to ${to} (${bytes} bytes), checked and whole.${withPhotos}${without}\n`,
      )
    })
}
