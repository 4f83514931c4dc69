/** Kept in reserve for days on which some gauges do not report. */
export const reserveNeighbours = 8
/** Networks larger than this are dense enough for fewer neighbours to say all. */
const largeNetwork = 2000

/** Neighbouring reports that take part in one expectation. */
export function mostNeighbours(gaugeCount: number): number {
  return gaugeCount > largeNetwork ? 20 : 32
}
