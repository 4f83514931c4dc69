/** The odds of standing in wide bins, ours on the day after and on the same morning, on the half that is shown. */
import { lastHalf, type SetResult } from '../accuracy/runSet.ts'
import { titleOf } from '../plots/networkNames.ts'
import { figure } from '../print/table.ts'
import { wilsonInterval } from '../score/wilsonInterval.ts'
import { markdownTable } from './markdownTable.ts'

export function calibrationTable(results: readonly SetResult[]): string {
  const rows = results.flatMap((result) =>
    [result.ours.dayAfter, result.ours.sameMorning].flatMap((check) =>
      (check?.halves[lastHalf(result.halves)]?.calibration ?? []).map((bin) => {
        const { low, high } = wilsonInterval(bin.standShare * bin.count, bin.count)
        return [
          titleOf(result.set),
          check === result.ours.dayAfter ? 'day after' : 'same morning',
          `${bin.from} to ${bin.below}`,
          bin.count.toLocaleString('en'),
          figure(bin.meanPStands),
          figure(bin.standShare),
          `${figure(low)} to ${figure(high)}`,
        ]
      }),
    ),
  )
  return markdownTable(
    ['network', 'judged', '`p_stands`', 'readings', 'mean said', 'share that stand', '95 % interval'],
    rows,
    3,
  )
}
