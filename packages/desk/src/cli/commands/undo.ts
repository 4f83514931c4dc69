import type { Command } from 'commander'
import { atTheCommandLine, writeTrail } from '../../app/access/doer.ts'
import { undoDecision } from '../../app/undoDecision.ts'
import { valueFrom } from '../commandStopped.ts'
import { usualLedger, withLedger } from '../withLedger.ts'
import type { World } from '../world.ts'

export function addUndoCommand(program: Command, world: World): void {
  program
    .command('undo')
    .description('take a decision back; both stay in the ledger')
    .argument('<decision>', 'id of the decision')
    .option('--db <file>', 'ledger file', usualLedger)
    .option('--by <name>', 'who takes it back', 'coordinator')
    .option('--json', 'answer with the reviewed day as JSON')
    .action(async (decisionId: string, options: { db: string; by: string; json?: boolean }) => {
      const review = await withLedger(world, options.db, { create: false }, async (ports) => {
        const reviewed = valueFrom(await undoDecision(ports, { decisionId, by: options.by }))
        await writeTrail(ports, atTheCommandLine, { act: 'undo', subject: decisionId })
        return reviewed
      })
      await world.out.write(
        options.json
          ? `${JSON.stringify(review)}\n`
          : `Decision ${decisionId} of ${review.day} taken back. ${review.facts.toDecide} to decide.\n`,
      )
    })
}
