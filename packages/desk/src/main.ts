/** The only file that picks adapters and opens doors: SQLite, the HTTP server, the terminal, the clock. */
import { readFileSync } from 'node:fs'
import { createInterface } from 'node:readline'
import open from 'open'
import { read } from 'read'
import { carriers } from './carriers/carriers.ts'
import { outgoingSecretsFrom } from './carriers/outgoingSecretsFrom.ts'
import { run } from './cli/run.ts'
import type { TextOut, World } from './cli/world.ts'
import { fileIntake } from './intake/fileIntake.ts'
import { folders } from './intake/folders.ts'
import { readGaugesFile, readReadingsFile } from './intake/readTables.ts'
import { redrawPhoto } from './intake/redrawPhoto.ts'
import { isLoopbackHost, listenOn } from './server/listenOn.ts'
import { newUuidV7 } from './store/newUuidV7.ts'
import { openSqlitePorts } from './store/sqlite/openSqlitePorts.ts'
import { sqliteLedgerFiles } from './store/sqlite/sqliteLedgerFiles.ts'

const world: World = {
  openLedger: async (path, options) => ({
    ...(await openSqlitePorts(path, options)),
    redrawPhoto,
    carriers,
    outgoingSecrets: outgoingSecretsFrom(process.env),
    clock: { nowUtc: () => new Date().toISOString() },
    newId: newUuidV7,
  }),
  ledgerFiles: sqliteLedgerFiles,
  intakeFiles: fileIntake,
  folders,
  archiveFiles: { readPlaces: readGaugesFile, readReadings: readReadingsFile },
  startServer: listenOn,
  isLoopback: isLoopbackHost,
  askLine: async (question) => (process.stdin.isTTY ? String(await read({ prompt: question })) : null),
  askSecret: async (question) =>
    process.stdin.isTTY ? String(await read({ prompt: question, silent: true })) : await firstLine(process.stdin),
  out: textOut(process.stdout),
  err: textOut(process.stderr),
  untilStopped: () =>
    new Promise((stop) => {
      process.once('SIGINT', () => stop())
      process.once('SIGTERM', () => stop())
    }),
  openBrowser: async (url) => {
    await open(url)
  },
  version: ownVersion(),
}

function textOut(stream: NodeJS.WriteStream): TextOut {
  return {
    // A reader that goes away (`| head`) ends the work quietly.
    write: (text) => new Promise((done) => void stream.write(text, () => done())),
    isTerminal: stream.isTTY === true,
    columns: stream.columns ?? 100,
  }
}

async function firstLine(input: NodeJS.ReadStream): Promise<string | null> {
  for await (const line of createInterface({ input })) return line
  return null
}

function ownVersion(): string {
  const text = readFileSync(new URL('../package.json', import.meta.url), 'utf8')
  return (JSON.parse(text) as { version: string }).version
}

process.stdout.on('error', (error: NodeJS.ErrnoException) => process.exit(error.code === 'EPIPE' ? 0 : 1))
process.exitCode = await run(process.argv.slice(2), world)
