import type { Command } from 'commander'
import { CommandStopped } from '../commandStopped.ts'
import { usualLedger } from '../withLedger.ts'
import type { World } from '../world.ts'

export function addDoctorCommand(program: Command, world: World): void {
  program
    .command('doctor')
    .description('examine the ledger: is it whole, what does it hold')
    .option('--db <file>', 'ledger file', usualLedger)
    .option('--json', 'answer as JSON')
    .action(async (options: { db: string; json?: boolean }) => {
      const found = await world.ledgerFiles.examine(options.db)
      const about = {
        gaugewright: world.version,
        node: process.version,
        platform: `${process.platform} ${process.arch}`,
      }
      if (options.json) await world.out.write(`${JSON.stringify({ ...about, ...found })}\n`)
      else {
        const lines = [
          `gaugewright ${about.gaugewright}, Node ${about.node}, ${about.platform}`,
          `ledger      ${found.path}, ${found.bytes} bytes, schema ${found.schemaVersion}`,
          `integrity   ${found.integrity}`,
          ...found.counts.map(({ name, rows }) => `${name.padEnd(11)} ${rows}`),
          ...found.photosLost.map((name) => `photo lost  ${name}`),
        ]
        await world.out.write(`${lines.join('\n')}\n`)
      }
      if (found.integrity !== 'ok') {
        throw new CommandStopped({
          code: 'LEDGER_DAMAGED',
          seen: `${found.path}: ${found.integrity}`,
          advice: 'Keep the file, and put the last good backup in its place with "gaugewright restore".',
        })
      }
      if (found.photosLost.length > 0) {
        throw new CommandStopped({
          code: 'PHOTO_FILE_GONE',
          seen: `${found.photosLost.length} photos of ${found.path} are lost or changed`,
          advice: `Bring their files back into ${found.path}.photos from a backup.`,
        })
      }
    })
}
