import type { Command } from 'commander'
import { checkHeader } from '../../app/archive/checkChunk.ts'
import { type ArchiveOptions, addArchiveOptions, runArchiveCommand } from '../archiveCommand.ts'
import type { World } from '../world.ts'

export function addCheckCommand(program: Command, world: World): void {
  addArchiveOptions(program.command('check'))
    .description(
      'screen an archive of readings from files: the odds that each stands, its likeliest mistake, a proposal',
    )
    .action((gauges: string, readings: string, options: ArchiveOptions) =>
      runArchiveCommand(world, {
        files: { gauges, readings },
        options,
        task: 'check',
        header: checkHeader,
        levels: new Float64Array(),
        what: 'readings judged',
      }),
    )
}
