/** The scale of odds: near 0 and near 1 there is as much room as in the middle. */

const lowest = 0.002
const highest = 0.9995

/** Natural log of the odds; shares off the scale are set on its ends. */
export function logOdds(share: number): number {
  const inside = Math.min(highest, Math.max(lowest, share))
  return Math.log(inside / (1 - inside))
}

export const logOddsDomain: [number, number] = [logOdds(0), logOdds(1)]

const shares = [0.01, 0.1, 0.5, 0.9, 0.99, 0.999]

/** Where to set ticks, and what to write beside them. */
export const logOddsTicks = {
  ticks: shares.map(logOdds),
  tickFormat: (value: number): string => String(shares.find((share) => Math.abs(logOdds(share) - value) < 1e-9) ?? ''),
}
