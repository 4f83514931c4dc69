import type { Command } from 'commander'
import { gaugeHabits } from '../../app/gaugeHabits.ts'
import { networkHabits } from '../../app/networkHabits.ts'
import { valueFrom } from '../commandStopped.ts'
import { printGaugeHabits, printNetworkHabits } from '../printHabits.ts'
import { usualLedger, withLedger } from '../withLedger.ts'
import type { World } from '../world.ts'

export function addHabitsCommand(program: Command, world: World): void {
  program
    .command('habits')
    .description("what the gauges' readings show over the years: dates, totals, round figures, light rain, fit, slips")
    .argument('[gauge]', 'code of a gauge; without it, all gauges, the strongest habit first')
    .option('--db <file>', 'ledger file', usualLedger)
    .option('--json', 'answer as JSON')
    .action(async (gauge: string | undefined, options: { db: string; json?: boolean }) => {
      const text = await withLedger(world, options.db, { create: false }, async (ports) => {
        if (gauge === undefined) {
          const network = valueFrom(await networkHabits(ports, { wait: true }))
          return options.json ? JSON.stringify(network) : printNetworkHabits(network, world.out.columns)
        }
        const habits = valueFrom(await gaugeHabits(ports, { gauge, wait: true }))
        return options.json ? JSON.stringify(habits) : printGaugeHabits(habits, world.out.columns)
      })
      await world.out.write(`${text}\n`)
    })
}
