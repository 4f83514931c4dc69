import type { Command } from 'commander'
import { draftMessage } from '../../app/draftMessage.ts'
import { evidenceForReading } from '../../app/evidenceForReading.ts'
import { valueFrom } from '../commandStopped.ts'
import { findReading } from '../findReading.ts'
import { printEvidence } from '../printEvidence.ts'
import { usualLedger, withLedger } from '../withLedger.ts'
import type { World } from '../world.ts'

export function addExplainCommand(program: Command, world: World): void {
  program
    .command('explain')
    .description('the evidence about one reading, in words; or the letter to its observer')
    .argument('<day>', 'observing day, YYYY-MM-DD or latest')
    .argument('<gauge>', 'code of the gauge')
    .option('--db <file>', 'ledger file', usualLedger)
    .option('--letter', 'print only the letter to the observer')
    .option('--json', 'answer as JSON')
    .action(async (day: string, gauge: string, options: { db: string; letter?: boolean; json?: boolean }) => {
      const text = await withLedger(world, options.db, { create: false }, async (ports) => {
        const readingId = await findReading(ports, day, gauge)
        if (options.letter) {
          const letter = valueFrom(await draftMessage(ports, { readingId }))
          return options.json ? JSON.stringify(letter) : letter.message
        }
        const evidence = valueFrom(await evidenceForReading(ports, { readingId }))
        return options.json ? JSON.stringify(evidence) : printEvidence(evidence)
      })
      await world.out.write(`${text}\n`)
    })
}
