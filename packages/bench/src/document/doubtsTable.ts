/** The strongest doubts about readings that nobody changed, a table for each network, and the categories discussed. */
import { lastHalf, type SetResult } from '../accuracy/runSet.ts'
import type { Doubt } from '../doubts/describeDoubts.ts'
import { likelyReasons } from '../doubts/likelyReason.ts'
import type { AroundOnDay } from '../doubts/surroundings.ts'
import { reasonWords } from '../doubts/wordReason.ts'
import { titleOf } from '../plots/networkNames.ts'
import { markdownTable } from './markdownTable.ts'

export function doubtsTables(results: readonly SetResult[]): string {
  return results
    .flatMap((result) => {
      const half = lastHalf(result.halves)
      const doubts = result.ours.dayAfter?.doubts[half] ?? []
      if (doubts.length === 0) return []
      return [`### ${titleOf(result.set)}, ${half} half`, doubtsTable(doubts)]
    })
    .join('\n\n')
}

/** How many of the doubts of each network are of each category, with a line on what it likely is. */
export function reasonsTable(results: readonly SetResult[]): string {
  const doubtsOf = results.map((result) => result.ours.dayAfter?.doubts[lastHalf(result.halves)] ?? [])
  const rows = likelyReasons.map((reason) => [
    reasonWords[reason].short,
    ...doubtsOf.map((doubts) => String(doubts.filter((doubt) => doubt.reason === reason).length)),
    reasonWords[reason].discussion,
  ])
  const table = markdownTable(
    ['looks like', ...results.map((result) => titleOf(result.set)), 'what it likely is'],
    rows,
  )
  // The last column holds words.
  return table.replace(/---: \|$/m, '--- |')
}

function doubtsTable(doubts: readonly Doubt[]): string {
  const rows = doubts.map((doubt) => {
    const { surroundings: at } = doubt
    return [
      doubt.gaugeId,
      doubt.date,
      millimetres(doubt.reportedMm),
      Number(doubt.pStands.toPrecision(2)).toString(),
      doubt.mistake ?? '',
      millimetres(doubt.proposedMm),
      `${millimetres(at.beforeMm)} … ${millimetres(at.afterMm)}`,
      range(at.aroundBefore),
      range(at.around),
      range(at.aroundAfter),
      `${reasonWords[doubt.reason].short}${doubt.isBesideMistake ? ' †' : ''}`,
    ]
  })
  return markdownTable(
    [
      'gauge',
      'day',
      'reported',
      '`p_stands`',
      'called',
      'proposed',
      'own day before … after',
      'around, day before',
      'around, the day',
      'around, day after',
      'looks like',
    ],
    rows,
    11,
  )
}

/** Middle and, in brackets, the range of the nearest gauges. */
function range({ leastMm, medianMm, mostMm }: AroundOnDay): string {
  return `${millimetres(medianMm)} (${millimetres(leastMm)} to ${millimetres(mostMm)})`
}

function millimetres(amountMm: number): string {
  return Number.isFinite(amountMm) ? String(Math.round(amountMm * 10) / 10) : '-'
}
