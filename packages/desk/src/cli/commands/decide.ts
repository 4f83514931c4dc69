import { decideAskSchema } from '@gaugewright/contract'
import { parseAmount } from '@gaugewright/science'
import type { Command } from 'commander'
import { Option } from 'commander'
import { refused } from '../../app/answer.ts'
import { decide } from '../../app/decide.ts'
import { evidenceForReading } from '../../app/evidenceForReading.ts'
import { CommandStopped, valueFrom } from '../commandStopped.ts'
import { findReading } from '../findReading.ts'
import { usualLedger, withLedger } from '../withLedger.ts'
import type { World } from '../world.ts'

interface DecideOptions {
  db: string
  amount?: string
  firstDay?: string
  reason: string
  by: string
  json?: boolean
}

export function addDecideCommand(program: Command, world: World): void {
  program
    .command('decide')
    .description('decide about one reading: stands, amended, asked, set-aside')
    .argument('<day>', 'observing day, YYYY-MM-DD or latest')
    .argument('<gauge>', 'code of the gauge')
    .argument('<verdict>', 'stands, amended, asked or set-aside')
    .option('--db <file>', 'ledger file', usualLedger)
    .option('--amount <amount>', 'with amended: the amount, in the unit it was typed in; the proposal if left out')
    .option('--first-day <day>', 'with amended: first day of a total')
    .option('--reason <text>', 'why', '')
    .addOption(new Option('--by <name>', 'who decides').default('coordinator'))
    .option('--json', 'answer with the reviewed day as JSON')
    .action(async (day: string, gauge: string, verdict: string, options: DecideOptions) => {
      const review = await withLedger(world, options.db, { create: false }, async (ports) => {
        const readingId = await findReading(ports, day, gauge)
        const named = verdict === 'set-aside' ? 'set aside' : verdict
        const amended = named === 'amended' ? await amendedFrom(ports, readingId, options) : null
        const ask = decideAskSchema.safeParse({
          readingId,
          verdict: named,
          amended,
          reason: options.reason,
          by: options.by,
        })
        if (!ask.success) {
          throw new CommandStopped(
            refused('VERDICT_UNKNOWN', `"${verdict}"`, 'Give stands, amended, asked or set-aside.').problem,
            2,
          )
        }
        return valueFrom(await decide(ports, ask.data))
      })
      const row = review.roll.find((entry) => entry.code.toLowerCase() === gauge.toLowerCase())
      await world.out.write(
        options.json
          ? `${JSON.stringify(review)}\n`
          : `${row?.code} ${row?.name}, ${review.day}: ${row?.decision?.verdict} (decision ${row?.decision?.id}). ${review.facts.toDecide} left to decide.\n`,
      )
    })
}

async function amendedFrom(
  ports: Parameters<typeof evidenceForReading>[0],
  readingId: string,
  options: DecideOptions,
): Promise<{ amountUm: number; isTrace: boolean; firstDay: string; lastDay: string }> {
  const evidence = valueFrom(await evidenceForReading(ports, { readingId }))
  const { firstDay, lastDay, unit } = evidence.reading
  if (options.amount === undefined) {
    if (evidence.proposal !== null) return evidence.proposal
    throw new CommandStopped(
      refused('AMENDED_AMOUNT_MISPLACED', 'no amount, and nothing is proposed', 'Give the amount with --amount.')
        .problem,
    )
  }
  const typed = parseAmount(options.amount, { unit })
  if (typed.kind !== 'amount') {
    throw new CommandStopped(
      refused('AMENDED_AMOUNT_UNREADABLE', `"${options.amount}"`, 'Give the amount as a number, or T for a trace.')
        .problem,
      2,
    )
  }
  return { amountUm: typed.amountUm, isTrace: typed.isTrace, firstDay: options.firstDay ?? firstDay, lastDay }
}
