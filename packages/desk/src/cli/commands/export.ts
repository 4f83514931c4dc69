import type { Command } from 'commander'
import { Option } from 'commander'
import { exportAccepted } from '../../app/exportAccepted.ts'
import { exportDay } from '../../app/exportDay.ts'
import { exportShef } from '../../app/exportShef.ts'
import { valueFrom } from '../commandStopped.ts'
import { isoDayOption } from '../dayOption.ts'
import { usualLedger, withLedger } from '../withLedger.ts'
import type { World } from '../world.ts'
import { writeOut } from '../writeOut.ts'

export function addExportCommand(program: Command, world: World): void {
  const group = program.command('export').description('products in open formats')
  group
    .command('accepted')
    .description('the accepted record as CSV, as check, expect and import read it')
    .option('--db <file>', 'ledger file', usualLedger)
    .option('--from <day>', 'first day, YYYY-MM-DD', isoDayOption)
    .option('--to <day>', 'last day, YYYY-MM-DD', isoDayOption)
    .addOption(new Option('--unit <unit>', "mm or in; the network's by default").choices(['mm', 'in']))
    .option('--out <file>', 'file to write instead of the terminal')
    .action(async (options: { db: string; from?: string; to?: string; unit?: 'mm' | 'in'; out?: string }) => {
      await withLedger(world, options.db, { create: false }, async (ports) => {
        const { db: _, out: file, ...ask } = options
        const answer = valueFrom(await exportAccepted(ports, ask))
        await writeOut(world, answer.lines, file)
        await world.err.write(`${answer.fromDay} to ${answer.toDay}, amounts in ${answer.unit}.\n`)
      })
    })
  group
    .command('day')
    .description("one day's gauges as GeoJSON")
    .argument('[day]', 'observing day, YYYY-MM-DD', 'latest')
    .option('--db <file>', 'ledger file', usualLedger)
    .option('--exact-positions', 'exact positions instead of two decimals; for work inside the network')
    .option('--out <file>', 'file to write instead of the terminal')
    .action(async (day: string, options: { db: string; exactPositions?: boolean; out?: string }) => {
      await withLedger(world, options.db, { create: false }, async (ports) => {
        const answer = valueFrom(await exportDay(ports, { day, exactPositions: options.exactPositions === true }))
        await writeOut(world, [`${JSON.stringify(answer)}\n`], options.out)
      })
    })
  group
    .command('shef')
    .description("one day's accepted record as SHEF")
    .argument('[day]', 'observing day, YYYY-MM-DD', 'latest')
    .option('--db <file>', 'ledger file', usualLedger)
    .requiredOption('--source <id>', 'who sends it: 3 to 8 of A-Z, 0-9 and _')
    .addOption(new Option('--unit <unit>', "mm or in; the network's by default").choices(['mm', 'in']))
    .option('--out <file>', 'file to write instead of the terminal')
    .action(async (day: string, options: { db: string; source: string; unit?: 'mm' | 'in'; out?: string }) => {
      await withLedger(world, options.db, { create: false }, async (ports) => {
        const { source, unit } = options
        const answer = valueFrom(await exportShef(ports, { day, source, ...(unit !== undefined && { unit }) }))
        await writeOut(world, [answer.text], options.out)
        await world.err.write(`${answer.day}, ${answer.values} readings.\n`)
      })
    })
}
