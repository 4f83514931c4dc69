/** The evidence about one reading in the terminal. Pure. */
import type { DayEvidence } from '@gaugewright/contract'

const SHOWN_NEIGHBOURS = 8

export function printEvidence(evidence: DayEvidence): string {
  const { reading } = evidence
  const days = reading.firstDay === reading.lastDay ? reading.lastDay : `${reading.firstDay} to ${reading.lastDay}`
  const lines = [
    `${evidence.code} ${evidence.name}, ${days}: typed "${reading.text}" (${reading.unit})`,
    evidence.sentence,
    '',
    ...evidence.explanations
      .filter((explanation) => explanation.odds >= 0.005)
      .map(
        ({ kind, odds, impliedMm }) => `${percent(odds)}  ${kind.padEnd(15)} ${impliedMm.toFixed(1).padStart(7)} mm`,
      ),
    '',
    ...evidence.neighbours.slice(0, SHOWN_NEIGHBOURS).map((neighbour) => {
      const amount = neighbour.amountMm === null ? '-' : neighbour.isTrace ? 'trace' : neighbour.amountMm.toFixed(1)
      const distance = `${(neighbour.distanceM / 1000).toFixed(1).padStart(6)} km`
      return `${distance}  ${amount.padStart(7)} mm  weight ${percent(neighbour.weight)}  ${neighbour.code} ${neighbour.name}`
    }),
  ]
  for (const decision of evidence.decisions) {
    const by = decision.by.kind === 'person' ? decision.by.name : decision.by.rule
    const what = decision.undoes === null ? decision.verdict : `took back ${decision.undoes}`
    lines.push(`${decision.decidedAtUtc}  ${what}, by ${by}${decision.reason === '' ? '' : `: ${decision.reason}`}`)
  }
  return lines.join('\n')
}

function percent(share: number): string {
  return `${(share * 100).toFixed(0).padStart(3)} %`
}
