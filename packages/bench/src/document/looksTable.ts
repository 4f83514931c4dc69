/** How far natural mistakes may account for good readings of low odds. */
import { lastHalf, type SetResult } from '../accuracy/runSet.ts'
import { titleOf } from '../plots/networkNames.ts'
import { figure, percent } from '../print/table.ts'
import { markdownTable } from './markdownTable.ts'

export function looksTable(results: readonly SetResult[]): string {
  const rows = results.flatMap((result) =>
    (result.ours.dayAfter?.looks[lastHalf(result.halves)] ?? []).map((bin) => {
      return [
        titleOf(result.set),
        `${bin.from} to ${bin.below}`,
        bin.good.toLocaleString('en'),
        bin.lookedAt.toLocaleString('en'),
        percent(bin.looksWrong / bin.lookedAt),
        percent(1 - (bin.looksWrong + bin.looksRight) / bin.lookedAt),
        percent(bin.looksRight / bin.lookedAt),
        figure(bin.good / (bin.good + bin.wrong)),
      ]
    }),
  )
  return markdownTable(
    [
      'network',
      '`p_stands`',
      'nobody changed',
      'looked at',
      'look wrong',
      'may be either',
      'look right',
      'share that stand',
    ],
    rows,
    2,
  )
}
