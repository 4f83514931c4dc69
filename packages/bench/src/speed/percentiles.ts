/** Where half, 99 of 100, and all of many times lie. */

/** @returns the value that a share of the times does not pass; NaN where there is none */
export function atShare(times: readonly number[], share: number): number {
  const sorted = [...times].sort((one, other) => one - other)
  return sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)] ?? Number.NaN
}

/** Milliseconds with one digit: `p50 1.2 ms, p99 3.4 ms, longest 5.6 ms`. */
export function spreadMs(times: readonly number[]): string {
  const at = (share: number): string => `${atShare(times, share).toFixed(1)} ms`
  return `p50 ${at(0.5)}, p99 ${at(0.99)}, longest ${at(1)}`
}
