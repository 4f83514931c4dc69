import { existsSync } from 'node:fs'
import { rm } from 'node:fs/promises'
import type { Command } from 'commander'
import { refused } from '../../app/answer.ts'
import { type DemoStep, demoState, makeDemo } from '../../app/makeDemo.ts'
import type { Ports } from '../../ports/ports.ts'
import { CommandStopped, valueFrom } from '../commandStopped.ts'
import { isoDayOption, wholeNumberOption } from '../dayOption.ts'
import { openDesk } from '../openDesk.ts'
import { progressBar } from '../progress.ts'
import { demoLedger, withLedger } from '../withLedger.ts'
import type { World } from '../world.ts'
import { portFrom } from './serve.ts'

/** A summer morning after a thunderstorm. */
const DEMO_DAY = '2026-07-16'
const DEMO_SEED = 7

interface DemoOptions {
  db: string
  fresh?: boolean
  seed: number
  today: string
  gauges?: number
  years?: number
  port?: number
  open: boolean
  serve: boolean
}

export function addDemoCommand(program: Command, world: World): void {
  program
    .command('demo')
    .description('make an invented network with years of readings and this morning’s reports, and open the desk on it')
    .option('--db <file>', 'ledger file; used as it is when it is there', demoLedger)
    .option('--fresh', 'make the demo anew, in place of the file that is there')
    .option('--seed <number>', 'another number, another basin', wholeNumberOption(0, 2 ** 31 - 1), DEMO_SEED)
    .option('--today <day>', 'the morning, YYYY-MM-DD', isoDayOption, DEMO_DAY)
    .option('--gauges <count>', 'gauges', wholeNumberOption(10, 2000))
    .option('--years <count>', 'years of readings', wholeNumberOption(1, 30))
    .option('--port <number>', 'port on 127.0.0.1 (a free one from 8137 on by default)', portFrom)
    .option('--no-open', 'do not open the browser')
    .option('--no-serve', 'only make the file')
    .action(async (options: DemoOptions) => {
      await clearPlace(world, options)
      await withLedger(world, options.db, { create: true }, async (ports) => {
        if ((await demoState(ports.ledger)) === 'empty') await fill(world, ports, options)
        if (!options.serve) return
        await openDesk(world, ports, { ledger: options.db, open: options.open, port: options.port })
      })
    })
}

/** A demo that is to be made anew, or was broken off, is taken away; a real ledger never is. */
async function clearPlace(world: World, options: DemoOptions): Promise<void> {
  if (!existsSync(options.db)) return
  const state = await withLedger(world, options.db, { create: false }, ({ ledger }) => demoState(ledger))
  if (state === 'other') {
    throw new CommandStopped(
      refused(
        'LEDGER_NOT_EMPTY',
        `${options.db} holds a network of its own`,
        'Make the demo in another file with --db.',
      ).problem,
    )
  }
  if (state !== 'begun' && options.fresh !== true) return
  for (const suffix of ['', '-wal', '-shm']) await rm(options.db + suffix, { force: true })
}

async function fill(world: World, ports: Ports, options: DemoOptions): Promise<void> {
  const words: Record<DemoStep, string> = {
    weather: 'Making the weather, the people and their slips …',
    readings: 'Storing readings …',
    learning: 'Learning the climate and judging the morning …',
  }
  const bar = progressBar(world, 'readings')
  let told: DemoStep | null = null
  const made = valueFrom(
    await makeDemo(ports, {
      seed: options.seed,
      today: options.today,
      ...(options.gauges !== undefined && { gaugeCount: options.gauges }),
      ...(options.years !== undefined && { years: options.years }),
      onProgress: (step, done, total) => {
        if (step !== told) {
          bar.stop()
          void world.err.write(`${words[step]}\n`)
        }
        told = step
        if (step === 'readings') bar.update(done, total)
      },
    }),
  )
  bar.stop()
  await world.out.write(`${options.db}: ${made.gauges} gauges, ${made.readings} readings up to ${made.today}.\n`)
}
