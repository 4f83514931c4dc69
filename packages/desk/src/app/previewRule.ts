/** What a rule would do: on the last mornings of the ledger, at every threshold that is offered. Nothing is stored. */
import type { PreviewRuleAsk, RulePreview } from '@gaugewright/contract'
import {
  epochDayFromIso,
  expectedLetThrough,
  isoFromEpochDay,
  letStandAtFor,
  ruleCurve,
  ruleStepFrom,
  ruleSteps,
  yearMornings,
} from '@gaugewright/science'
import type { Ledger } from '../ports/ledger.ts'
import type { Ports } from '../ports/ports.ts'
import { type Answer, answered, refused } from './answer.ts'
import { learnedModel } from './model/learnedModel.ts'
import { RecentlyUsed } from './morning/recentlyUsed.ts'
import { type OddsOfMornings, oddsOfMornings } from './rule/oddsOfMornings.ts'
import { isThreshold } from './setRule.ts'

export interface PreviewRule extends PreviewRuleAsk {
  signal?: AbortSignal
  onProgress?: (daysDone: number, dayCount: number) => void
}

/** A year, or as many days as hold so many readings: half a minute's work on two cores. */
const USUAL_DAYS = 365
const USUAL_READINGS = 120_000
const LEAST_DAYS = 14
const KEPT = 4
const kept = new WeakMap<Ledger, RecentlyUsed<OddsOfMornings>>()

export async function previewRule(ports: Pick<Ports, 'ledger'>, ask: PreviewRule): Promise<Answer<RulePreview>> {
  const { ledger } = ports
  const network = (await ledger.networks())[0]
  const range = network === undefined ? null : await ledger.dayRange(network.id)
  if (network === undefined || range === null) {
    return refused(
      'LEDGER_EMPTY',
      'the ledger holds no readings yet',
      'Import readings first, or run "gaugewright demo".',
    )
  }
  if (ask.letStandAt !== undefined && !isThreshold(ask.letStandAt)) {
    return refused('RULE_THRESHOLD_OUTSIDE', `a threshold of ${ask.letStandAt}`, 'Give odds from 0.5 to 0.9999.')
  }
  const gauges = await ledger.gauges(network.id)
  // Learning is shared with whoever else waits for it: it goes on when this asker leaves.
  const learned = await learnedModel(ledger, { networkId: network.id, gauges, range })
  const toDay = epochDayFromIso(range.lastDay)
  const fromDay = Math.max(epochDayFromIso(range.firstDay), toDay - (ask.days ?? usualDays(gauges.length)) + 1)
  const cache = kept.get(ledger) ?? new RecentlyUsed<OddsOfMornings>(KEPT)
  kept.set(ledger, cache)
  const key = `${network.id} ${learned.version} ${range.stored} ${fromDay} ${toDay}`
  const odds = cache.get(key) ?? (await oddsOfMornings(ledger, { network, learned, fromDay, toDay, ...ask }))
  cache.set(key, odds)
  const current = (await ledger.ruleSettings(network.id)).at(-1)?.letStandAt ?? null
  const recordDays = toDay - epochDayFromIso(range.firstDay) + 1
  return answered({ recordDays, ...previewOf(odds, fromDay, current, network.docketBelow, ask) })
}

function usualDays(gaugeCount: number): number {
  return Math.max(LEAST_DAYS, Math.min(USUAL_DAYS, Math.floor(USUAL_READINGS / Math.max(1, gaugeCount))))
}

/** Pure. */
function previewOf(
  odds: OddsOfMornings,
  fromDay: number,
  current: number | null,
  docketBelow: number,
  ask: PreviewRule,
): Omit<RulePreview, 'recordDays'> {
  const { pStands, morningCount, cannotTell } = odds
  const at = ask.letStandAt ?? current
  const through = at === null ? null : expectedLetThrough(pStands, at)
  const asked = [ask.letStandAt ?? null, current, docketBelow].filter((threshold) => threshold !== null)
  return {
    firstDay: isoFromEpochDay(fromDay),
    lastDay: isoFromEpochDay(fromDay + morningCount - 1),
    mornings: morningCount,
    readings: pStands.length,
    cannotTell,
    points: ruleCurve(odds, [...ruleSteps, ...asked]),
    at:
      at === null || through === null
        ? null
        : { letStandAt: at, expectedWrong: through.expectedWrong, low: through.lowWrong, high: through.highWrong },
    wished: ask.wrongAYear === undefined ? null : wishedOf(odds, ask.wrongAYear),
  }
}

function wishedOf({ pStands, morningCount }: OddsOfMornings, wrongAYear: number): NonNullable<RulePreview['wished']> {
  const found = letStandAtFor(pStands, (wrongAYear * morningCount) / yearMornings)
  return { wrongAYear, letStandAt: found === null ? null : ruleStepFrom(found) }
}
