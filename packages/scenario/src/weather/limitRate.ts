/** Bends a rate so that it nears `limit` and never passes it; small rates stay as they are. Same unit for both. */
export function limitRate(rate: number, limit: number): number {
  return rate / Math.sqrt(1 + (rate / limit) ** 2)
}
