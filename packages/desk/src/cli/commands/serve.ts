import { readFile } from 'node:fs/promises'
import { type Command, InvalidArgumentError } from 'commander'
import { refused } from '../../app/answer.ts'
import { CommandStopped } from '../commandStopped.ts'
import { openDesk } from '../openDesk.ts'
import { ownerFirst } from '../ownerFirst.ts'
import { usualLedger, withLedger } from '../withLedger.ts'
import type { World } from '../world.ts'

interface ServeOptions {
  db: string
  host: string
  port?: number
  publicUrl?: string
  cert?: string
  key?: string
  open: boolean
}

export function addServeCommand(program: Command, world: World): void {
  program
    .command('serve')
    .description('open the desk in the browser: on this computer alone, or with --host to others, who then sign in')
    .option('--db <file>', 'ledger file; made if it is not there', usualLedger)
    .option('--host <address>', 'address to listen on; 0.0.0.0 for all of this computer', '127.0.0.1')
    .option('--port <number>', 'port (a free one from 8137 on by default)', portFrom)
    .option('--public-url <url>', 'where people reach the desk, when a proxy stands before it', publicUrlFrom)
    .option('--cert <file>', 'certificate as PEM: speak https')
    .option('--key <file>', 'its key as PEM')
    .option('--no-open', 'do not open the browser')
    .action(async (options: ServeOptions) => {
      const { db, host, port, publicUrl, open } = options
      const tls = await tlsFrom(options)
      await withLedger(world, db, { create: true }, async (ports) => {
        const isForOthers = publicUrl !== undefined || !world.isLoopback(host)
        if (isForOthers) await ownerFirst(world, ports, publicUrl ?? host)
        if (isForOthers && tls === undefined && publicUrl?.startsWith('https:') !== true) {
          await world.err.write(
            'Passwords travel unencrypted to this desk, and phones cannot keep readings offline. Use --cert and --key, or a proxy with https and --public-url.\n',
          )
        }
        await openDesk(world, ports, {
          ledger: db,
          open,
          host,
          ...(port !== undefined && { port }),
          ...(publicUrl !== undefined && { publicUrl }),
          ...(tls !== undefined && { tls }),
        })
      })
    })
}

export function portFrom(text: string): number {
  const port = Number(text)
  if (!/^\d+$/.test(text) || port > 65_535) throw new InvalidArgumentError('Give a port from 0 to 65535.')
  return port
}

function publicUrlFrom(text: string): string {
  if (URL.canParse(text) && /^https?:$/.test(new URL(text).protocol) && new URL(text).pathname === '/') {
    return new URL(text).origin
  }
  throw new InvalidArgumentError('Give an address such as https://desk.example, without a path.')
}

async function tlsFrom({ cert, key }: ServeOptions): Promise<{ cert: string; key: string } | undefined> {
  if (cert === undefined && key === undefined) return undefined
  if (cert === undefined || key === undefined) {
    throw new CommandStopped(
      refused('TLS_INCOMPLETE', 'a certificate or a key alone', 'Give both --cert and --key.').problem,
      2,
    )
  }
  try {
    return { cert: await readFile(cert, 'utf8'), key: await readFile(key, 'utf8') }
  } catch (error) {
    const seen = error instanceof Error ? error.message : String(error)
    throw new CommandStopped(refused('TLS_INCOMPLETE', seen, 'Name files that can be read.').problem)
  }
}
