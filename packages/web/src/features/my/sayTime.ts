/** Days and times as the page says them, in the reader's language and on the phone's clock. */
import type { IsoDay, Language } from '@gaugewright/science'

export function sayDay(day: IsoDay, language: Language): string {
  const options = { timeZone: 'UTC', weekday: 'long', day: 'numeric', month: 'long' } as const
  return new Intl.DateTimeFormat(language, options).format(new Date(`${day}T00:00:00Z`))
}

export function sayShortDay(day: IsoDay, language: Language): string {
  const options = { timeZone: 'UTC', weekday: 'short', day: 'numeric', month: 'short' } as const
  return new Intl.DateTimeFormat(language, options).format(new Date(`${day}T00:00:00Z`))
}

export function sayMonth(month: string, language: Language): string {
  return new Intl.DateTimeFormat(language, { timeZone: 'UTC', month: 'short' }).format(
    new Date(`${month}-01T00:00:00Z`),
  )
}

export function sayTime(time: Date, language: Language): string {
  return new Intl.DateTimeFormat(language, { weekday: 'long', hour: 'numeric', minute: '2-digit' }).format(time)
}

export function sayMoment(utc: string, language: Language): string {
  const options = { day: 'numeric', month: 'short', hour: 'numeric', minute: '2-digit' } as const
  return new Intl.DateTimeFormat(language, options).format(new Date(utc))
}
