/** `gaugewright import` as a script sees it: what it prints, its exit code, and the ledger file. */
import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { Command } from 'commander'
import { beforeEach, describe, expect, it } from 'vitest'
import { CommandStopped } from '../src/cli/commandStopped.ts'
import { addImportCommand } from '../src/cli/commands/import.ts'
import type { World } from '../src/cli/world.ts'
import { fileIntake } from '../src/intake/fileIntake.ts'
import { newUuidV7 } from '../src/store/newUuidV7.ts'
import { openSqliteLedger } from '../src/store/sqlite/openSqliteLedger.ts'
import { portsOver } from './support/openDesk.ts'
import { tempFiles } from './support/tempFiles.ts'

const files = tempFiles()
let number = 0
let db: string
beforeEach(() => {
  db = join(files.folder, `ledger-${++number}.db`)
})

/** Exit code and what was written to the two outputs. */
async function run(...words: string[]): Promise<{ code: number; out: string; err: string }> {
  const said = { out: '', err: '' }
  const text = (where: 'out' | 'err') => ({
    write: async (part: string) => {
      said[where] += part
    },
    isTerminal: false,
    columns: 100,
  })
  const world: Pick<World, 'openLedger' | 'intakeFiles' | 'out' | 'err'> = {
    openLedger: async (path, options) => ({
      ...portsOver(await openSqliteLedger(path, options)),
      clock: { nowUtc: () => '2026-04-01T12:00:00Z' },
      newId: newUuidV7,
    }),
    intakeFiles: fileIntake,
    out: text('out'),
    err: text('err'),
  }
  const program = new Command('gaugewright').exitOverride().configureOutput({
    writeErr: (part) => {
      said.err += part
    },
  })
  addImportCommand(program, world as World)
  for (const command of program.commands) command.exitOverride().copyInheritedSettings(program)
  try {
    await program.parseAsync(['import', ...words, '--db', db], { from: 'user' })
    return { code: 0, ...said }
  } catch (error) {
    if (error instanceof CommandStopped) return { code: error.exitCode, out: said.out, err: `${error.line}\n` }
    if ((error as { code?: string }).code?.startsWith('commander.')) return { code: 2, ...said }
    throw error
  }
}

const gauges = files.write('gauges.csv', 'gauge,lat,lon,elev_m\nA,45,11,100\nB,45.1,11.2,\n')
const readings = files.write('readings.csv.gz', 'gauge,day,amount\nA,2026-03-01,0.04\nB,2026-03-01,T\n')

describe('gaugewright import', () => {
  it('takes gauges and readings, says what it did, and does nothing the second time', async () => {
    const words = [gauges, readings, '--unit', 'in', '--time-zone', 'America/Denver', '--network', 'hills']
    expect(await run(...words)).toEqual({
      code: 0,
      out: `made the network "hills": read at 07:00, America/Denver, inches
${gauges}: 2 gauges added; 0 changed, 0 the same
${readings}: 2 readings stored
`,
      err: '',
    })
    const again = await run(...words)
    expect(again.out).toBe(
      `${gauges}: 0 gauges added; 0 changed, 2 the same\n${readings}: 0 readings stored; 2 there already\n`,
    )
  })

  it('prints JSON for machines', async () => {
    const { out } = await run(gauges, readings, '--unit', 'mm', '--json')
    expect(JSON.parse(out)).toMatchObject({
      networkIsNew: true,
      files: [{ kind: 'gauges' }, { readings: { stored: 2 } }],
    })
  })

  it('fails with one line and exit code 1 where a row is bad, and makes no ledger', async () => {
    const bad = files.write('bad.csv', 'gauge,day,amount\nA,2026-03-01,1\nA,2026-03-02,lots\n')
    const { code, out, err } = await run(gauges, bad, '--unit', 'mm')
    expect([code, out]).toEqual([1, ''])
    expect(err).toMatch(
      /^AMOUNT_UNREADABLE {2}bad\.csv line 3, amount: found "lots", wanted a depth in mm such as 12\.4, T for a trace, or nothing\. [^\n]+\n$/,
    )
    expect(existsSync(db)).toBe(false)
  })

  it('leaves a ledger that was there as it was, byte for byte', async () => {
    await run(gauges, readings, '--unit', 'mm')
    const before = readFileSync(db)
    const bad = files.write('bad.csv', 'gauge,day,amount\nA,2026-03-05,1\nZ,2026-03-02,1\n')
    expect((await run(bad, '--unit', 'mm')).code).toBe(1)
    expect(readFileSync(db)).toEqual(before)
  })

  it('takes the good rows with --keep-good, and names the file of the others', async () => {
    const bad = files.write('mixed.csv', 'Station,When,Rain\nA,1.3.2026,"1,5"\nZ,2.3.2026,-99\nZ,2.3.2026,2\n')
    const words = ['--unit', 'mm', '--column', 'gauge=Station', '--column', 'day=When', '--column', 'amount=Rain']
    const refused = join(files.folder, 'mixed.refused.csv')
    await run(gauges)
    const { code, out } = await run(
      bad,
      ...words,
      '--date-format',
      'd/m/y',
      '--decimal',
      'comma',
      '--missing',
      '-99',
      '--keep-good',
      '--refused-file',
      refused,
    )
    expect([code, out]).toEqual([0, `${bad}: 1 reading stored; 1 row refused, with reasons in ${refused}\n`])
    expect(readFileSync(refused, 'utf8')).toContain('Z,2.3.2026,2,"mixed.csv line 4, Station: found')
  })

  it.each([
    [['--unit', 'cm']],
    [['--column', 'gauge']],
    [['--date-format', 'guess']],
    [['--no-such-option']],
    [['--delimiter', 'ab']],
    [['--keep-good', '--refused-file', gauges]],
  ])('answers bad usage with exit code 2: %j', async (words) => {
    expect((await run(gauges, ...words)).code).toBe(2)
    expect(existsSync(db)).toBe(false)
  })
})
