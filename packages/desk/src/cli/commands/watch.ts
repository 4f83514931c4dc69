import type { Problem } from '@gaugewright/contract'
import { type Command, InvalidArgumentError, Option } from 'commander'
import { refused } from '../../app/answer.ts'
import { takeFromFolder } from '../../app/takeFromFolder.ts'
import type { InFolder } from '../../ports/folders.ts'
import { type DayFormat, dayFormats } from '../../ports/intakeFiles.ts'
import type { Ports } from '../../ports/ports.ts'
import { CommandStopped } from '../commandStopped.ts'
import { usualLedger, withLedger } from '../withLedger.ts'
import type { World } from '../world.ts'

interface WatchOptions {
  db: string
  files?: string
  mails?: string
  unit?: 'mm' | 'in'
  dateFormat: DayFormat
  every: number
  settle: number
  once?: boolean
}

export function addWatchCommand(program: Command, world: World): void {
  program
    .command('watch')
    .description('take files and mails of CSV or SHEF as they come into a folder, each whole and once')
    .option('--db <file>', 'ledger file', usualLedger)
    .option('--files <folder>', 'folder of files; they move to its folders taken and refused, with a report')
    .option('--mails <folder>', 'Maildir; mails come from people of the network, observers for their own gauges')
    .addOption(new Option('--unit <unit>', 'unit of the amounts in tables of readings').choices(['mm', 'in']))
    .addOption(new Option('--date-format <format>', 'how days are written').choices(dayFormats).default('iso'))
    .option('--every <seconds>', 'look at least this often', secondsFrom, 10)
    .option('--settle <seconds>', 'a file that stayed as it is for so long is whole', secondsFrom, 2)
    .option('--once', 'take what waits now, and end')
    .action((options: WatchOptions) => runWatch(world, options))
}

async function runWatch(world: World, options: WatchOptions): Promise<void> {
  const { files, mails } = options
  if (files === undefined && mails === undefined) {
    throw new CommandStopped(
      refused('FOLDER_MISSING', 'no folder', 'Give --files FOLDER or --mails MAILDIR.').problem,
      2,
    )
  }
  await withLedger(world, options.db, { create: false }, async (ports) => {
    const folders: InFolder[] = []
    if (files !== undefined) folders.push(await opened(files, () => world.folders.files(files, options.settle * 1000)))
    if (mails !== undefined) folders.push(await opened(mails, () => world.folders.mails(mails)))
    if (options.once === true) {
      for (const folder of folders) await take(world, ports, folder, options)
      return
    }
    await world.out.write(`Watching ${[files, mails].filter(Boolean).join(' and ')}. Ctrl+C ends it.\n`)
    await Promise.all(folders.map((folder) => takeUntilStopped(world, ports, folder, options)))
  })
}

/** One look at a time; what comes while a look goes on is looked at right after it. */
async function takeUntilStopped(world: World, ports: Ports, folder: InFolder, options: WatchOptions): Promise<void> {
  let wake = (): void => undefined
  let isStopped = false
  let mayHaveCome = true
  const stopWatching = folder.watch(() => {
    mayHaveCome = true
    wake()
  }, options.every * 1000)
  void world.untilStopped().then(() => {
    isStopped = true
    wake()
  })
  while (!isStopped) {
    if (mayHaveCome) {
      mayHaveCome = false
      await take(world, ports, folder, options)
    } else {
      await new Promise<void>((resolve) => {
        wake = resolve
      })
    }
  }
  await stopWatching()
}

async function take(world: World, ports: Ports, folder: InFolder, options: WatchOptions): Promise<void> {
  const answer = await takeFromFolder(ports, world.intakeFiles, folder, {
    unit: options.unit,
    dayFormat: options.dateFormat,
    localTimeZone: Intl.DateTimeFormat().resolvedOptions().timeZone,
  })
  if (!answer.ok) throw new CommandStopped(answer.problem)
  for (const { outcome, report } of answer.value.files) {
    await (outcome === 'taken' ? world.out : world.err).write(report)
  }
}

async function opened(path: string, open: () => Promise<InFolder>): Promise<InFolder> {
  try {
    return await open()
  } catch (error) {
    const problem: Problem = {
      code: 'FOLDER_UNREADABLE',
      seen: `${path} (${(error as NodeJS.ErrnoException).code ?? (error as Error).message})`,
      advice: 'Give a folder in which files can be read, moved and written.',
    }
    throw new CommandStopped(problem)
  }
}

function secondsFrom(text: string): number {
  const seconds = Number(text)
  if (text.trim() !== '' && seconds >= 0 && seconds <= 3600) return seconds
  throw new InvalidArgumentError('Give seconds from 0 to 3600.')
}
