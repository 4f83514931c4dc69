import { type Command, InvalidArgumentError } from 'commander'
import { openDesk } from '../openDesk.ts'
import { usualLedger, withLedger } from '../withLedger.ts'
import type { World } from '../world.ts'

export function addServeCommand(program: Command, world: World): void {
  program
    .command('serve')
    .description('open the desk in the browser, on this computer alone')
    .option('--db <file>', 'ledger file; made if it is not there', usualLedger)
    .option('--port <number>', 'port on 127.0.0.1 (a free one from 8137 on by default)', portFrom)
    .option('--no-open', 'do not open the browser')
    .action(async (options: { db: string; port?: number; open: boolean }) => {
      await withLedger(world, options.db, { create: true }, (ports) =>
        openDesk(world, ports, {
          ledger: options.db,
          open: options.open,
          ...(options.port !== undefined && { port: options.port }),
        }),
      )
    })
}

export function portFrom(text: string): number {
  const port = Number(text)
  if (!/^\d+$/.test(text) || port > 65_535) throw new InvalidArgumentError('Give a port from 0 to 65535.')
  return port
}
