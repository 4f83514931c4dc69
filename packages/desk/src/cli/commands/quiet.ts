import { answerOccasionAskSchema, type Holding } from '@gaugewright/contract'
import type { Command } from 'commander'
import { atTheCommandLine } from '../../app/access/doer.ts'
import { answerOccasion } from '../../app/answerOccasion.ts'
import { holding } from '../../app/holding.ts'
import { answerWith, askFrom, ledgerCommand } from '../answerCommand.ts'
import { plainTable } from '../plainTable.ts'
import type { World } from '../world.ts'

/** Two commands on one list: who is going quiet, whom to thank. */
export function addQuietCommand(program: Command, world: World): void {
  const print = { quiet: printQuiet, thanks: printThanks }
  for (const name of ['quiet', 'thanks'] as const) {
    const description =
      name === 'quiet'
        ? 'observers whose own habit of answering has changed downwards'
        : 'occasions for a word of thanks'
    const own = ledgerCommand(program, name, description)
    own
      .command('list', { isDefault: true })
      .description('those that wait for a word')
      .action((_own: object, command: Command) => answerWith(world, command, holding, print[name]))
    own
      .command('done')
      .description('a word was sent; or with --not-now none is wanted')
      .argument('<gauge>', 'code of the gauge')
      .argument('<occasion>', 'as the list names it')
      .option('--not-now', 'no word is wanted now', false)
      .action((code: string, key: string, { notNow }: { notNow: boolean }, command: Command) =>
        answerWith(
          world,
          command,
          async (ports) => {
            const ask = askFrom(answerOccasionAskSchema, { code, key, how: notNow ? 'not now' : 'sent' })
            return answerOccasion(ports, ask, atTheCommandLine)
          },
          print[name],
        ),
      )
    own
      .command('undo')
      .description('takes a "done" back')
      .argument('<id>', 'id, as --json tells it under "answered"')
      .action((undo: string, _own: object, command: Command) =>
        answerWith(
          world,
          command,
          async (ports) => answerOccasion(ports, askFrom(answerOccasionAskSchema, { undo }), atTheCommandLine),
          print[name],
        ),
      )
  }
}

function printQuiet({ quiet, day }: Holding): string {
  if (quiet.length === 0) return `Nobody is going quiet (to ${day}).\n`
  const table = plainTable(['gauge', 'observer', 'sure', 'since', 'before', 'now', 'occasion'])
  const percent = (share: number) => `${Math.round(share * 100)} %`
  for (const row of quiet) {
    table.push([
      row.code,
      row.name,
      percent(row.probability),
      row.changedOn,
      percent(row.before),
      percent(row.since),
      row.key,
    ])
  }
  return `${table.toString()}\n`
}

function printThanks({ occasions, day }: Holding): string {
  if (occasions.length === 0) return `No occasion waits (to ${day}).\n`
  const table = plainTable(['gauge', 'observer', 'day', 'occasion', 'words'])
  for (const row of occasions) table.push([row.code, row.name, row.day, row.key, row.text])
  return `${table.toString()}\n`
}
