/** How far a month's readings count for the months around it, by distance in months (0 to 6). */
const monthWeight = [1, 0.6, 0.2, 0.05, 0.02, 0.01, 0.01]

/** Weight of readings of one month (0 to 11) for the climate of another. */
export function weightOfMonth(month: number, other: number): number {
  return monthWeight[distanceInMonths(month, other)]!
}

function distanceInMonths(a: number, b: number): number {
  const apart = Math.abs(a - b)
  return Math.min(apart, 12 - apart)
}
