import { existsSync } from 'node:fs'
import { rm } from 'node:fs/promises'
import { resolve } from 'node:path'
import { type Command, InvalidArgumentError, Option } from 'commander'
import { importFiles } from '../../app/importFiles.ts'
import { type DayFormat, dayFormats } from '../../ports/intakeFiles.ts'
import { CommandStopped, valueFrom } from '../commandStopped.ts'
import { importSummary } from '../importSummary.ts'
import { progressBar } from '../progress.ts'
import { usualLedger, withLedger } from '../withLedger.ts'
import type { World } from '../world.ts'

interface ImportOptions {
  db: string
  unit?: 'mm' | 'in'
  kind?: 'gauges' | 'readings' | 'dly' | 'shef'
  stations?: string
  column?: Record<string, string>
  dateFormat: DayFormat
  decimal: 'point' | 'comma'
  delimiter?: string
  missing?: string[]
  encoding?: string
  flagged: 'keep' | 'leave-out'
  wereInches?: boolean
  network?: string
  networkName?: string
  timeZone?: string
  readingTime?: string
  language?: 'en' | 'es'
  keepGood?: boolean
  refusedFile?: string
  json?: boolean
}

export function addImportCommand(program: Command, world: World): void {
  program
    .command('import')
    .description('gauges and readings from CSV (.gz too), SHEF or GHCN-Daily .dly, whole or not at all')
    .argument('<files...>', 'GAUGES.csv, READINGS.csv, SHEF, *.dly, station list; told apart by their first lines')
    .option('--db <file>', 'ledger file, made where there is none', usualLedger)
    .addOption(new Option('--unit <unit>', 'unit of the amounts in tables of readings').choices(['mm', 'in']))
    .addOption(new Option('--kind <kind>', 'what the files hold').choices(['gauges', 'readings', 'dly', 'shef']))
    .option('--stations <file>', 'list of stations that goes with .dly files')
    .option('--column <field=name>', 'our word for a column and its name in the file; may be repeated', columnOption)
    .addOption(new Option('--date-format <format>', 'how days are written').choices(dayFormats).default('iso'))
    .addOption(new Option('--decimal <mark>', 'decimal mark of amounts').choices(['point', 'comma']).default('point'))
    .option('--delimiter <character>', 'between columns (tab for a tab); found by itself if left out', delimiterOption)
    .option('--missing <text>', 'a text that means no reading, such as -9999; may be repeated', listOption)
    .option('--encoding <label>', 'of text that is not UTF-8, such as windows-1252')
    .addOption(
      new Option('--flagged <what>', 'readings that an archive has flagged')
        .choices(['keep', 'leave-out'])
        .default('keep'),
    )
    .option('--were-inches', 'millimetres of a .dly that were hundredths of an inch: give those back')
    .option('--network <id>', 'which network; a new one is made with the four options below')
    .option('--network-name <name>', 'name of a new network')
    .option('--time-zone <zone>', "IANA zone of a new network; this computer's if left out")
    .option('--reading-time <time>', 'local reading hour of a new network; 07:00 if left out')
    .addOption(new Option('--language <language>', 'of a new network').choices(['en', 'es']))
    .option('--keep-good', 'take the good rows, and write the refused ones with their reasons to FILE.refused.csv here')
    .option('--refused-file <file>', 'where --keep-good writes them')
    .option('--json', 'print the result as JSON')
    .action((files: string[], options: ImportOptions) => runImport(world, files, options))
}

/** A ledger that was made for an import that failed does not stay behind. */
async function runImport(world: World, paths: string[], options: ImportOptions): Promise<void> {
  const { refusedFile } = options
  if (refusedFile !== undefined && paths.some((path) => resolve(path) === resolve(refusedFile))) {
    throw new CommandStopped(
      { code: 'FILE_NOT_WRITABLE', seen: `${refusedFile} is to be read.`, advice: 'Give another --refused-file.' },
      2,
    )
  }
  const isNew = !existsSync(options.db)
  try {
    await importInto(world, paths, options)
  } catch (error) {
    if (isNew) for (const suffix of ['', '-wal', '-shm']) await rm(options.db + suffix, { force: true })
    throw error
  }
}

async function importInto(world: World, paths: string[], options: ImportOptions): Promise<void> {
  await withLedger(world, options.db, { create: true }, async (ports) => {
    const bar = progressBar(world, 'bytes')
    try {
      const answer = await importFiles(ports, world.intakeFiles, {
        paths,
        kind: options.kind,
        stations: options.stations,
        network: {
          id: options.network,
          name: options.networkName,
          timeZone: options.timeZone,
          readingTime: options.readingTime,
          language: options.language,
        },
        localTimeZone: Intl.DateTimeFormat().resolvedOptions().timeZone,
        unit: options.unit,
        columns: options.column,
        dayFormat: options.dateFormat,
        decimal: options.decimal,
        delimiter: options.delimiter,
        encoding: options.encoding,
        missing: options.missing,
        flagged: options.flagged,
        wereInches: options.wereInches === true,
        keepGood: options.keepGood === true ? (options.refusedFile ?? refusedFileName(paths[0] ?? '')) : undefined,
        onProgress: (_, done, total) => bar.update(done, total),
      })
      bar.stop()
      const report = valueFrom(answer)
      await world.out.write(options.json === true ? `${JSON.stringify(report)}\n` : importSummary(report))
    } finally {
      bar.stop()
    }
  })
}

/** `readings.csv.gz` gives `readings.refused.csv`, in the folder one is in. */
function refusedFileName(path: string): string {
  const name = (path.split(/[\\/]/).at(-1) ?? path).replace(/\.gz$/i, '')
  return name.includes('.') ? name.replace(/\.([^.]*)$/, '.refused.$1') : `${name}.refused`
}

function columnOption(text: string, before: Record<string, string> | undefined): Record<string, string> {
  const parts = /^([a-z_]+)=(.+)$/.exec(text)
  if (parts === null) throw new InvalidArgumentError('Write it as field=NAME, for example gauge=Station.')
  return { ...before, [parts[1] ?? '']: parts[2] ?? '' }
}

function delimiterOption(text: string): string {
  const character = text === 'tab' || text === '\\t' ? '\t' : text
  if (character.length !== 1 || character === '"') throw new InvalidArgumentError('Give one character, or tab.')
  return character
}

function listOption(text: string, before: string[] | undefined): string[] {
  return [...(before ?? []), text]
}
