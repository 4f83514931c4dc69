/** The gauges whose readings lie farthest from what the others let expect. */
import type { SetResult } from '../accuracy/runSet.ts'
import { titleOf } from '../plots/networkNames.ts'
import { enoughDays, isBeyondChance } from '../plots/residualClasses.ts'
import { figure } from '../print/table.ts'
import type { GaugeResidual } from '../score/expectationShape.ts'
import { markdownTable } from './markdownTable.ts'

const shown = 6

export function residualsTable(results: readonly SetResult[]): string {
  const rows = results.flatMap((result) => {
    const gauges = (result.ours.expectation?.shape.gauges ?? []).filter((gauge) => gauge.count >= enoughDays)
    const beyond = gauges.filter(isBeyondChance).length
    return [...gauges]
      .sort((a, b) => Math.abs(standardErrors(b)) - Math.abs(standardErrors(a)))
      .slice(0, shown)
      .map((gauge, place) => [
        place === 0 ? `${titleOf(result.set)}: ${beyond} of ${gauges.length} beyond chance` : '',
        result.network.gauges[gauge.gauge]!.id,
        gauge.count.toLocaleString('en'),
        figure(gauge.meanPit),
        figure(standardErrors(gauge), 1),
      ])
  })
  return markdownTable(['network', 'gauge', 'days', 'mean share below', 'standard errors from 0.5'], rows, 2)
}

/** Of a mean of independent uniforms. */
function standardErrors({ meanPit, count }: GaugeResidual): number {
  return (meanPit - 0.5) * Math.sqrt(12 * count)
}
