/** The evidence about one reading in the terminal, in the unit it was typed in. Pure. */
import type { DayEvidence } from '@gaugewright/contract'
import { formatAmount, umFromMm } from '@gaugewright/science'

const SHOWN_NEIGHBOURS = 8

export function printEvidence(evidence: DayEvidence): string {
  const { reading } = evidence
  const amount = (amountMm: number, isTrace = false): string =>
    `${formatAmount({ amountUm: umFromMm(amountMm), isTrace }, reading.unit).padStart(7)} ${reading.unit}`
  const days = reading.firstDay === reading.lastDay ? reading.lastDay : `${reading.firstDay} to ${reading.lastDay}`
  const lines = [
    `${evidence.code} ${evidence.name}, ${days}: typed "${reading.text}" (${reading.unit})`,
    evidence.sentence,
    '',
    ...evidence.explanations
      .filter(({ kind, odds }) => kind === 'stands' || odds >= 0.005)
      .map(({ kind, odds, impliedMm }) => `${percent(odds)}  ${kind.padEnd(15)} ${amount(impliedMm)}`),
    '',
    ...evidence.neighbours.slice(0, SHOWN_NEIGHBOURS).map((neighbour) => {
      const caught = neighbour.amountMm === null ? '-'.padStart(10) : amount(neighbour.amountMm, neighbour.isTrace)
      const distance = `${(neighbour.distanceM / 1000).toFixed(1).padStart(6)} km`
      return `${distance}  ${caught}  weight ${percent(neighbour.weight)}  ${neighbour.code} ${neighbour.name}`
    }),
  ]
  if (evidence.allowedFor !== null) lines.push('', evidence.allowedFor)
  if (evidence.notes.length > 0) lines.push('', ...evidence.notes)
  for (const decision of evidence.decisions) {
    const by = decision.by.kind === 'person' ? decision.by.name || 'a forgotten person' : decision.by.rule
    const what = decision.undoes === null ? decision.verdict : `took back ${decision.undoes}`
    lines.push(`${decision.decidedAtUtc}  ${what}, by ${by}${decision.reason === '' ? '' : `: ${decision.reason}`}`)
  }
  return lines.join('\n')
}

function percent(share: number): string {
  return `${(share * 100).toFixed(0).padStart(3)} %`
}
