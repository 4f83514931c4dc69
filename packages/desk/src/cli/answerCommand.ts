/** What most commands on a ledger do alike: open it, ask a use case, print its answer as JSON or in words. */
import type { Command } from 'commander'
import type { z } from 'zod'
import type { Answer } from '../app/answer.ts'
import type { Ports } from '../ports/ports.ts'
import { valueFrom } from './commandStopped.ts'
import { notValid } from './notValid.ts'
import { usualLedger, withLedger } from './withLedger.ts'
import type { World } from './world.ts'

/** Options that a command with parts gives to all of them. */
export function ledgerCommand(program: Command, name: string, description: string): Command {
  return program
    .command(name)
    .description(description)
    .option('--db <file>', 'ledger file', usualLedger)
    .option('--json', 'answer as JSON')
}

export async function answerWith<T>(
  world: World,
  command: Command,
  ask: (ports: Ports) => Promise<Answer<T>>,
  print: (value: T) => string,
): Promise<void> {
  const { db, json } = command.optsWithGlobals<{ db: string; json?: boolean }>()
  const value = await withLedger(world, db, { create: false }, async (ports) => valueFrom(await ask(ports)))
  await world.out.write(json ? `${JSON.stringify(value)}\n` : print(value))
}

/** What was typed, read against the shape of the contract. @throws {CommandStopped} naming the first thing that does not fit */
export function askFrom<S extends z.ZodType>(schema: S, typed: unknown): z.output<S> {
  const read = schema.safeParse(typed)
  if (read.success) return read.data
  throw notValid(read.error.issues[0])
}
