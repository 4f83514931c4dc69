import { type PreviewRuleAsk, previewRuleAskSchema } from '@gaugewright/contract'
import type { Command } from 'commander'
import { atTheCommandLine, writeTrail } from '../../app/access/doer.ts'
import { refused } from '../../app/answer.ts'
import { previewRule } from '../../app/previewRule.ts'
import { readRule } from '../../app/readRule.ts'
import { setRule } from '../../app/setRule.ts'
import { CommandStopped, valueFrom } from '../commandStopped.ts'
import { printRule, printRulePreview } from '../printRule.ts'
import { progressBar } from '../progress.ts'
import { usualLedger, withLedger } from '../withLedger.ts'
import type { World } from '../world.ts'

interface Common {
  db: string
  json?: boolean
}

export function addRuleCommand(program: Command, world: World): void {
  const rule = program
    .command('rule')
    .description('the rule that lets sure readings stand alone: what is in force, and what was set before')
    .option('--db <file>', 'ledger file', usualLedger)
    .option('--json', 'answer as JSON')
    .action(async (options: Common) => {
      const answer = await withLedger(world, options.db, { create: false }, async (ports) =>
        valueFrom(await readRule(ports)),
      )
      await world.out.write(options.json ? `${JSON.stringify(answer)}\n` : printRule(answer))
    })
  addSet(rule, world)
  addPreview(rule, world)
}

function addSet(rule: Command, world: World): void {
  rule
    .command('set')
    .description('set the rule; every setting is kept, and setting an old one again undoes')
    .argument('<odds>', 'let stand when at least this sure, 0.5 to 0.9999; or "off"')
    .requiredOption('--why <text>', 'why: kept beside the setting')
    .option('--by <name>', 'who sets it', 'coordinator')
    .action(async (odds: string, own: { why: string; by: string }, command: Command) => {
      const options = command.optsWithGlobals<Common>()
      const letStandAt = thresholdFrom(odds)
      const answer = await withLedger(world, options.db, { create: false }, async (ports) => {
        const set = valueFrom(await setRule(ports, { letStandAt, why: own.why, by: own.by }))
        await writeTrail(ports, atTheCommandLine, { act: 'setRule', subject: null })
        return set
      })
      await world.out.write(options.json ? `${JSON.stringify(answer)}\n` : printRule(answer))
    })
}

function addPreview(rule: Command, world: World): void {
  rule
    .command('preview')
    .description('what the rule would do: readings left to a person, wrong readings expected to be let through')
    .option('--days <number>', 'the last so many observing days (default: a year, fewer in a large network)')
    .option('--at <odds>', 'a threshold to look at beside the usual ones')
    .option('--wrong-a-year <number>', 'look for the threshold that lets through no more wrong readings than this')
    .action(async (own: { days?: string; at?: string; wrongAYear?: string }, command: Command) => {
      const options = command.optsWithGlobals<Common>()
      const ask = previewAskFrom(own)
      const progress = progressBar(world, 'days judged')
      const [preview, current] = await withLedger(world, options.db, { create: false }, async (ports) => {
        try {
          const found = valueFrom(await previewRule(ports, { ...ask, onProgress: progress.update }))
          return [found, valueFrom(await readRule(ports))] as const
        } finally {
          progress.stop()
        }
      })
      const marked = [current.letStandAt, ask.letStandAt ?? null, preview.wished?.letStandAt ?? null]
      await world.out.write(options.json ? `${JSON.stringify(preview)}\n` : printRulePreview(preview, marked))
    })
}

function thresholdFrom(text: string): number | null {
  if (text === 'off') return null
  const odds = Number(text)
  if (text.trim() !== '' && Number.isFinite(odds)) return odds
  throw new CommandStopped(
    refused('RULE_THRESHOLD_OUTSIDE', `"${text}"`, 'Give odds from 0.5 to 0.9999, or "off".').problem,
    2,
  )
}

function previewAskFrom({ days, at, wrongAYear }: { days?: string; at?: string; wrongAYear?: string }): PreviewRuleAsk {
  const given = { days, letStandAt: at, wrongAYear }
  const asked = Object.fromEntries(Object.entries(given).filter(([, text]) => text !== undefined))
  const read = previewRuleAskSchema.safeParse(asked)
  if (read.success) return read.data
  const name = String(read.error.issues[0]?.path[0] ?? '')
  throw new CommandStopped(
    refused(
      'ASK_NOT_VALID',
      `${name} "${asked[name] ?? ''}"`,
      'Give --days a whole number up to 3660, --at odds and --wrong-a-year a number.',
    ).problem,
    2,
  )
}
