import {
  type AnnouncedAbsence,
  announceAbsenceAskSchema,
  type NetworkAbsences,
  ownerAtTheDesk,
  withdrawAbsenceAskSchema,
} from '@gaugewright/contract'
import type { Command } from 'commander'
import { atTheCommandLine } from '../../app/access/doer.ts'
import { announceAbsence } from '../../app/announceAbsence.ts'
import type { Answer } from '../../app/answer.ts'
import { listAbsences } from '../../app/listAbsences.ts'
import { withdrawAbsence } from '../../app/withdrawAbsence.ts'
import type { Ports } from '../../ports/ports.ts'
import { valueFrom } from '../commandStopped.ts'
import { notValid } from '../notValid.ts'
import { plainTable } from '../plainTable.ts'
import { usualLedger, withLedger } from '../withLedger.ts'
import type { World } from '../world.ts'

const actor = ownerAtTheDesk

export function addAbsenceCommand(program: Command, world: World): void {
  const absence = program
    .command('absence')
    .description('days for which nobody will read a gauge: the roll shows it away, and expects one total afterwards')
    .option('--db <file>', 'ledger file', usualLedger)
    .option('--json', 'answer as JSON')
  const answerWith = async (command: Command, gauge: string | undefined, use: (ports: Ports) => Promise<unknown>) => {
    const { db, json } = command.optsWithGlobals<{ db: string; json?: boolean }>()
    await withLedger(world, db, { create: false }, async (ports) => {
      await use(ports)
      const answer = valueFrom(await listAbsences(ports, gauge === undefined ? {} : { gauge }))
      await world.out.write(json ? `${JSON.stringify(answer)}\n` : printAbsences(answer))
    })
  }
  absence
    .command('list', { isDefault: true })
    .description('absences that stand and have not passed; of one gauge all, those taken back too')
    .argument('[gauge]', 'code of a gauge')
    .action((gauge: string | undefined, _own: object, command: Command) =>
      answerWith(command, gauge, async () => undefined),
    )
  absence
    .command('announce')
    .description('nobody will read this gauge from the first to the last of these mornings')
    .argument('<gauge>', 'code of the gauge')
    .argument('<first>', 'first morning without a reading: 2031-08-03')
    .argument('<last>', 'last morning without a reading')
    .action((gauge: string, firstDay: string, lastDay: string, _own: object, command: Command) =>
      answerWith(command, gauge, async (ports) => {
        const ask = announceAbsenceAskSchema.safeParse({ gauge, firstDay, lastDay })
        if (!ask.success) throw notValid(ask.error.issues[0])
        return done(await announceAbsence(ports, { ...ask.data, actor }, atTheCommandLine))
      }),
    )
  absence
    .command('withdraw')
    .description('take an absence back: the gauge is expected again, from the morning that is still open on')
    .argument('<gauge>', 'code of the gauge')
    .argument('<absence>', 'id of the absence, as "absence list" tells it')
    .action((gauge: string, id: string, _own: object, command: Command) =>
      answerWith(command, gauge, async (ports) => {
        const ask = withdrawAbsenceAskSchema.safeParse({ gauge, absence: id })
        if (!ask.success) throw notValid(ask.error.issues[0])
        return done(await withdrawAbsence(ports, { ...ask.data, actor }, atTheCommandLine))
      }),
    )
}

const done = (answer: Answer<AnnouncedAbsence>): AnnouncedAbsence => valueFrom(answer)

function printAbsences({ absences }: NetworkAbsences): string {
  if (absences.length === 0) return 'No absence is announced.\n'
  const table = plainTable(['gauge', 'name', 'first', 'last', 'state', 'id'])
  for (const { code, gaugeName, firstDay, lastDay, withdrawnAtUtc, id } of absences) {
    table.push([code, gaugeName, firstDay, lastDay, withdrawnAtUtc === null ? 'stands' : 'taken back', id])
  }
  return `${table.toString()}\n`
}
