/** The only file that picks adapters and opens doors: SQLite, the HTTP server, the terminal, the clock. */
import { readFileSync } from 'node:fs'
import open from 'open'
import { carriers } from './carriers/carriers.ts'
import { outgoingSecretsFrom } from './carriers/outgoingSecretsFrom.ts'
import { run } from './cli/run.ts'
import type { TextOut, World } from './cli/world.ts'
import { fileIntake } from './intake/fileIntake.ts'
import { readGaugesFile, readReadingsFile } from './intake/readTables.ts'
import { redrawPhoto } from './intake/redrawPhoto.ts'
import { listenOnLoopback } from './server/listenOnLoopback.ts'
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
  archiveFiles: { readPlaces: readGaugesFile, readReadings: readReadingsFile },
  startServer: listenOnLoopback,
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

function ownVersion(): string {
  const text = readFileSync(new URL('../package.json', import.meta.url), 'utf8')
  return (JSON.parse(text) as { version: string }).version
}

process.stdout.on('error', (error: NodeJS.ErrnoException) => process.exit(error.code === 'EPIPE' ? 0 : 1))
process.exitCode = await run(process.argv.slice(2), world)
