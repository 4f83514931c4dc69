import type { DayEvidence } from '@gaugewright/contract'

/** How many neighbours the table and the map show at first: the heaviest carry nearly all the weight. */
export const shownNeighbours = 10

export function byWeight(neighbours: DayEvidence['neighbours']): DayEvidence['neighbours'] {
  return [...neighbours].sort((a, b) => b.weight - a.weight)
}
