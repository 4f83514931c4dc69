/** The command line in this process, on real files in a folder of its own: what it writes is kept, nothing is opened. */
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setFlagsFromString } from 'node:v8'
import { runInNewContext } from 'node:vm'
import { run } from '../../src/cli/run.ts'
import type { World } from '../../src/cli/world.ts'
import { fileIntake } from '../../src/intake/fileIntake.ts'
import { folders } from '../../src/intake/folders.ts'
import { readGaugesFile, readReadingsFile } from '../../src/intake/readTables.ts'
import { isLoopbackHost, listenOn } from '../../src/server/listenOn.ts'
import { newUuidV7 } from '../../src/store/newUuidV7.ts'
import { openSqlitePorts } from '../../src/store/sqlite/openSqlitePorts.ts'
import { sqliteLedgerFiles } from '../../src/store/sqlite/sqliteLedgerFiles.ts'
import { portsOver } from './openDesk.ts'

/**
 * The SQLite binding lets go of a closed file only when its statements are collected. A command ends with its process;
 * here several share one, so the collector is called instead.
 */
function endProcess(): void {
  setFlagsFromString('--expose-gc')
  ;(runInNewContext('gc') as () => void)()
}

export interface Ran {
  code: number
  out: string
  err: string
}

export interface TestWorld {
  folder: string
  path: (name: string) => string
  gaugewright: (...words: string[]) => Promise<Ran>
  /** Lines that will be typed when they are asked for. */
  typed: string[]
  /** Starts a command that runs until it is stopped; resolves with its first line. */
  start: (...words: string[]) => Promise<{ line: string; stop: () => Promise<Ran> }>
  remove: () => Promise<void>
}

export async function testWorld(): Promise<TestWorld> {
  const folder = await mkdtemp(join(tmpdir(), 'gaugewright-test-'))
  const typed: string[] = []
  const begin = (words: string[], onOut: (text: string) => void, untilStopped: () => Promise<void>): Promise<Ran> => {
    let out = ''
    let err = ''
    const world: World = {
      openLedger: async (path, options) => {
        const { ledger, ...beside } = await openSqlitePorts(path, options)
        return { ...portsOver(ledger, beside), newId: newUuidV7 }
      },
      ledgerFiles: sqliteLedgerFiles,
      archiveFiles: { readPlaces: readGaugesFile, readReadings: readReadingsFile },
      intakeFiles: fileIntake,
      folders,
      startServer: listenOn,
      isLoopback: isLoopbackHost,
      askLine: async () => typed.shift() ?? null,
      askSecret: async () => typed.shift() ?? null,
      out: {
        write: async (text) => {
          out += text
          onOut(text)
        },
        isTerminal: false,
        columns: 100,
      },
      err: {
        write: async (text) => {
          err += text
        },
        isTerminal: false,
        columns: 100,
      },
      untilStopped,
      openBrowser: async () => undefined,
      version: '0.0.0-test',
    }
    return run(words, world).then((code) => {
      endProcess()
      return { code, out, err }
    })
  }
  return {
    folder,
    typed,
    path: (name) => join(folder, name),
    gaugewright: (...words) =>
      begin(
        words,
        () => undefined,
        async () => undefined,
      ),
    start: (...words) =>
      new Promise((started, failed) => {
        let stop = (): void => undefined
        const stopped = new Promise<void>((resolve) => {
          stop = resolve
        })
        const ran = begin(
          words,
          (line) =>
            started({
              line,
              stop: () => {
                stop()
                return ran
              },
            }),
          () => stopped,
        )
        void ran.then((end) => failed(new Error(`ended with ${end.code}: ${end.err}`)))
      }),
    remove: () => rm(folder, { recursive: true, force: true }),
  }
}
