/** Amounts and days as the network's people write them. Words are in english.ts and spanish.ts. */
import { formatAmount, isoFromEpochDay, type Language, type Unit } from '@gaugewright/science'

export interface Figures {
  /** `12.4 mm`, `0.49 in`, `12,4 mm`. */
  amount: (amountMm: number) => string
  /** The figure alone: `12.4`, `0.49`. */
  plain: (amountMm: number) => string
  /** `Tuesday 3 March`, `Tuesday, March 3`, `martes, 3 de marzo`. */
  day: (epochDay: number) => string
  /** `3 March`, without the weekday. */
  shortDay: (epochDay: number) => string
  /** `72 %` */
  percent: (share: number) => string
}

export function figuresFor(language: Language, unit: Unit): Figures {
  const locale = language === 'es' ? 'es' : unit === 'in' ? 'en-US' : 'en-GB'
  const long = new Intl.DateTimeFormat(locale, { weekday: 'long', day: 'numeric', month: 'long', timeZone: 'UTC' })
  const short = new Intl.DateTimeFormat(locale, { day: 'numeric', month: 'long', timeZone: 'UTC' })
  const amount = (amountMm: number, form: 'number' | 'full'): string =>
    formatAmount({ amountUm: Math.round(Math.max(0, amountMm) * 1000), isTrace: false }, unit, language, form)
  return {
    plain: (amountMm) => amount(amountMm, 'number'),
    amount: (amountMm) => amount(amountMm, 'full'),
    day: (epochDay) => long.format(instantOf(epochDay)),
    shortDay: (epochDay) => short.format(instantOf(epochDay)),
    percent: (share) => `${Math.round(share * 100)} %`,
  }
}

function instantOf(epochDay: number): Date {
  return new Date(`${isoFromEpochDay(epochDay)}T00:00:00Z`)
}
