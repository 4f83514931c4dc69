/** Times as an observer gives them: so many minutes ago, or a time on the clock. Local to the phone. */

/** `HH:MM` on the phone's clock as an instant: today, or yesterday where today would lie ahead. Null for no time. */
export function instantFromClock(text: string, nowMs: number): string | null {
  const [, hours, minutes] = /^(\d{1,2}):(\d{2})$/.exec(text) ?? []
  if (hours === undefined || minutes === undefined || Number(hours) > 23 || Number(minutes) > 59) return null
  const time = new Date(nowMs)
  time.setHours(Number(hours), Number(minutes), 0, 0)
  // A minute of grace: the clock of the page and the one that was looked at may differ.
  if (time.getTime() > nowMs + 60_000) time.setDate(time.getDate() - 1)
  return time.toISOString()
}

/** `HH:MM` on the phone's clock; empty for null. */
export function clockFromInstant(instant: string | null): string {
  if (instant === null) return ''
  const time = new Date(instant)
  return `${String(time.getHours()).padStart(2, '0')}:${String(time.getMinutes()).padStart(2, '0')}`
}

export const minutesAgoOffered = [0, 5, 15, 30, 60] as const

export function instantMinutesAgo(minutes: number, nowMs: number): string {
  return new Date(nowMs - minutes * 60_000).toISOString()
}
