import { type DrillsOfPerson, drillSettingsSchema, drillsAskSchema } from '@gaugewright/contract'
import type { Command } from 'commander'
import { atTheCommandLine } from '../../app/access/doer.ts'
import { askRefresher } from '../../app/askRefresher.ts'
import { drillsDue } from '../../app/drillsDue.ts'
import { drillsOfPerson } from '../../app/drillsOfPerson.ts'
import { setDrills } from '../../app/setDrills.ts'
import { answerWith, askFrom, ledgerCommand } from '../answerCommand.ts'
import { plainTable } from '../plainTable.ts'
import type { World } from '../world.ts'

export function addDrillCommand(program: Command, world: World): void {
  const drill = ledgerCommand(
    program,
    'drill',
    'drills with drawn gauges: who is due, what a person showed, the pass mark',
  )
  drill
    .command('due', { isDefault: true })
    .description('observers who never passed, and refreshers that are due')
    .action((_own: object, command: Command) =>
      answerWith(world, command, drillsDue, ({ settings, people }) => {
        const head = `Pass mark ${Math.round(settings.passMark * 100)} %${settings.isRequired ? ', required' : ''}.\n`
        if (people.length === 0) return `${head}Nobody is due.\n`
        const table = plainTable(['who', 'name', 'passed', 'refresher'])
        for (const { about, name, passedOn, refresher } of people)
          table.push([about, name, passedOn ?? 'never', refresher])
        return `${head}${table.toString()}\n`
      }),
    )
  for (const act of ['show', 'ask'] as const) {
    drill
      .command(act)
      .description(act === 'show' ? 'every sitting of a person' : 'ask a person for a refresher')
      .argument('<kind>', 'candidate or person')
      .argument('<id>', 'id of the offer or of the person')
      .action((kind: string, id: string, _own: object, command: Command) =>
        answerWith(
          world,
          command,
          async (ports) => {
            const ask = askFrom(drillsAskSchema, { about: `${kind} ${id}` })
            return act === 'show' ? drillsOfPerson(ports, ask) : askRefresher(ports, ask, atTheCommandLine)
          },
          printDrills,
        ),
      )
  }
  drill
    .command('pass-mark')
    .description('sets the share of right answers that passes')
    .argument('<share>', '0.5 to 1', Number)
    .option('--required', 'observers who have not passed begin with the odds of the untrained', false)
    .action((passMark: number, { required }: { required: boolean }, command: Command) =>
      answerWith(
        world,
        command,
        async (ports) =>
          setDrills(ports, askFrom(drillSettingsSchema, { passMark, isRequired: required }), atTheCommandLine),
        ({ settings }) => `Pass mark ${Math.round(settings.passMark * 100)} %.\n`,
      ),
    )
}

function printDrills({ sittings, refresher, startingFactor }: DrillsOfPerson): string {
  const head = `Refresher: ${refresher}. Odds of a mistake to begin with: ${startingFactor.toFixed(2)} times the usual.\n`
  if (sittings.length === 0) return `${head}No sitting yet.\n`
  const table = plainTable(['when', 'right', 'passed', 'to repeat'])
  for (const { atUtc, rightShare, isPassed, repeat } of sittings) {
    table.push([atUtc.slice(0, 16), `${Math.round(rightShare * 100)} %`, isPassed ? 'yes' : 'no', repeat.join(', ')])
  }
  return `${head}${table.toString()}\n`
}
