/** What `check` and `expect` share: their files and days, the threads, the bar, the file that is written. */
import { type Command, Option } from 'commander'
import type { ArchiveWork } from '../app/archive/archiveWork.ts'
import { openArchive } from '../app/archive/openArchive.ts'
import { runArchive } from '../app/archive/runArchive.ts'
import { valueFrom } from './commandStopped.ts'
import { epochDayOption } from './dayOption.ts'
import { progressBar } from './progress.ts'
import type { World } from './world.ts'
import { writeOut } from './writeOut.ts'

export interface ArchiveOptions {
  unit: 'mm' | 'in'
  from?: number
  to?: number
  history?: string
  sameMorning?: boolean
  out?: string
}

export function addArchiveOptions(command: Command): Command {
  return command
    .argument('<gauges>', 'GAUGES.csv: gauge,lat,lon,elev_m or gauge,x_m,y_m,elev_m')
    .argument('<readings>', 'READINGS.csv or .csv.gz: gauge,day,amount, or a wide table with a column per gauge')
    .addOption(
      new Option('--unit <unit>', 'unit of the amounts in the files').choices(['mm', 'in']).makeOptionMandatory(),
    )
    .option('--from <day>', 'first day, YYYY-MM-DD', epochDayOption)
    .option('--to <day>', 'last day, YYYY-MM-DD', epochDayOption)
    .option('--history <file>', 'earlier readings, to learn the climate from')
    .option('--same-morning', 'use nothing later than the day judged')
    .option('--out <file>', 'file to write (.csv or .csv.gz); the terminal if left out')
}

export interface ArchiveRun {
  files: { gauges: string; readings: string; points?: string }
  options: ArchiveOptions
  task: ArchiveWork['task']
  header: string
  levels: Float64Array
  /** What is counted, for the closing line. */
  what: string
}

export async function runArchiveCommand(world: World, ask: ArchiveRun): Promise<void> {
  const { options } = ask
  const sameMorning = options.sameMorning === true
  const archive = valueFrom(
    await openArchive(world.archiveFiles, {
      ...ask.files,
      history: options.history,
      unit: options.unit,
      fromDay: options.from ?? null,
      toDay: options.to ?? null,
    }),
  )
  const bar = progressBar(world, 'days')
  let rows = 0
  async function* texts(): AsyncGenerator<string> {
    yield ask.header
    const chunks = runArchive({
      ...archive,
      task: ask.task,
      levels: ask.levels,
      sameMorning,
      onProgress: (done, total) => bar.update(done, total),
    })
    for await (const chunk of chunks) {
      rows += chunk.rows
      yield chunk.text
    }
  }
  try {
    await writeOut(world, texts(), options.out)
  } finally {
    bar.stop()
  }
  if (options.out !== undefined && world.err.isTerminal)
    await world.err.write(`${rows} ${ask.what} in ${options.out}\n`)
}
