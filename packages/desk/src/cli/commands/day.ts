import type { Command } from 'commander'
import { reviewDay } from '../../app/reviewDay.ts'
import { valueFrom } from '../commandStopped.ts'
import { printDay } from '../printDay.ts'
import { usualLedger, withLedger } from '../withLedger.ts'
import type { World } from '../world.ts'

export function addDayCommand(program: Command, world: World): void {
  program
    .command('day')
    .description("the morning's review: roll, docket, totals")
    .argument('[day]', 'observing day, YYYY-MM-DD', 'latest')
    .option('--db <file>', 'ledger file', usualLedger)
    .option('--all', 'show the whole roll, not only those who have not read')
    .option('--json', 'answer as JSON')
    .action(async (day: string, options: { db: string; all?: boolean; json?: boolean }) => {
      const review = await withLedger(world, options.db, { create: false }, async (ports) =>
        valueFrom(await reviewDay(ports, { day })),
      )
      const text = options.json
        ? `${JSON.stringify(review)}\n`
        : printDay(review, {
            colours: world.out.isTerminal,
            columns: world.out.columns,
            wholeRoll: options.all === true,
          })
      await world.out.write(text)
    })
}
