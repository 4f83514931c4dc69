import { changesBy, type DecideAsk, decideAskSchema, whatIfAskSchema } from '@gaugewright/contract'
import { parseAmount } from '@gaugewright/science'
import type { Command } from 'commander'
import { Option } from 'commander'
import { atTheCommandLine, writeTrail } from '../../app/access/doer.ts'
import { refused } from '../../app/answer.ts'
import { decide } from '../../app/decide.ts'
import { evidenceForReading } from '../../app/evidenceForReading.ts'
import { reviewDay } from '../../app/reviewDay.ts'
import { whatIf } from '../../app/whatIf.ts'
import type { Ports } from '../../ports/ports.ts'
import { CommandStopped, valueFrom } from '../commandStopped.ts'
import { findReading } from '../findReading.ts'
import { printWhatIf } from '../printWhatIf.ts'
import { usualLedger, withLedger } from '../withLedger.ts'
import type { World } from '../world.ts'

interface DecideOptions {
  db: string
  amount?: string
  firstDay?: string
  reason: string
  by: string
  whatIf?: boolean
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
    .option('--what-if', 'decide nothing; tell what it would do to the map, the area means and other readings')
    .option('--json', 'answer with the reviewed day as JSON; with --what-if, with what it would do')
    .action(async (day: string, gauge: string, verdict: string, options: DecideOptions) => {
      const text = await withLedger(world, options.db, { create: false }, async (ports) => {
        const ask = await decisionFrom(ports, { day, gauge, verdict, options })
        return options.whatIf === true ? toldText(ports, day, ask, options) : decidedText(ports, ask, options)
      })
      await world.out.write(text)
    })
}

async function decisionFrom(
  ports: Ports,
  { day, gauge, verdict, options }: { day: string; gauge: string; verdict: string; options: DecideOptions },
): Promise<DecideAsk> {
  const readingId = await findReading(ports, day, gauge)
  const named = verdict === 'set-aside' ? 'set aside' : verdict
  const amended = named === 'amended' ? await amendedFrom(ports, readingId, options) : null
  const { reason, by } = options
  const ask = decideAskSchema.safeParse({ readingId, verdict: named, amended, reason, by })
  if (ask.success) return ask.data
  throw new CommandStopped(
    refused('VERDICT_UNKNOWN', `"${verdict}"`, 'Give stands, amended, asked or set-aside.').problem,
    2,
  )
}

async function decidedText(ports: Ports, ask: DecideAsk, options: DecideOptions): Promise<string> {
  const review = valueFrom(await decide(ports, ask))
  await writeTrail(ports, atTheCommandLine, { act: 'decide', subject: ask.readingId })
  if (options.json) return `${JSON.stringify(review)}\n`
  const row = review.roll.find((entry) => entry.readingId === ask.readingId)
  const decided = `${row?.code} ${row?.name}, ${review.day}: ${row?.decision?.verdict} (decision ${row?.decision?.id})`
  return `${decided}. ${review.facts.toDecide} left to decide.\n`
}

async function toldText(ports: Ports, day: string, ask: DecideAsk, options: DecideOptions): Promise<string> {
  const review = valueFrom(await reviewDay(ports, { day }))
  const row = review.roll.find((entry) => entry.readingId === ask.readingId)
  if (row === undefined || row.amountUm === null) throw new Error(`reading ${ask.readingId} left the roll`)
  const changes = changesBy(ask, { amountUm: row.amountUm, isTrace: row.isTrace })
  const told = valueFrom(await whatIf(ports, whatIfAskSchema.parse({ day: review.day, changes })))
  return options.json ? `${JSON.stringify(told)}\n` : printWhatIf({ told, review, row, decision: ask })
}

async function amendedFrom(
  ports: Ports,
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
