import { evenLevels } from '@gaugewright/science'
import { type Command, Option } from 'commander'
import { expectHeader } from '../../app/archive/expectChunk.ts'
import { type ArchiveOptions, addArchiveOptions, runArchiveCommand } from '../archiveCommand.ts'
import { wholeNumberOption } from '../dayOption.ts'
import type { World } from '../world.ts'

interface ExpectOptions extends ArchiveOptions {
  at?: string
  leaveOneOut?: boolean
  quantiles: number
}

export function addExpectCommand(program: Command, world: World): void {
  addArchiveOptions(program.command('expect'))
    .description('predictive distributions: of each gauge from all others, or at points')
    .addOption(new Option('--leave-one-out', 'of each gauge from all others (this is the default)').conflicts('at'))
    .option('--at <file>', 'POINTS.csv: point,lat,lon,elev_m or point,x_m,y_m,elev_m')
    .option(
      '--quantiles <count>',
      'evenly spaced quantiles, at levels (k - 0.5) / count',
      wholeNumberOption(1, 1000),
      9,
    )
    .addHelpText(
      'after',
      "\nWrites a row for every gauge (or point) and every day asked for, by day, whether or not the gauge was read that day:\ngauge or point, day, p_dry, mean_mm, q1 … qN. A gauge's own reading of the day takes no part in its row.",
    )
    .action((gauges: string, readings: string, options: ExpectOptions) => {
      const { quantiles, at } = options
      return runArchiveCommand(world, {
        files: { gauges, readings, ...(at !== undefined && { points: at }) },
        options,
        task: 'expect',
        header: expectHeader(quantiles, at !== undefined),
        levels: evenLevels(quantiles),
        what: 'expectations',
      })
    })
}
