/** Amounts and days as the network's people write them. Words are in english.ts and spanish.ts. */
import { isoFromEpochDay, type Unit } from '@gaugewright/science'

export type Language = 'en' | 'es'

export interface Figures {
  /** `12.4 mm`, `0.49 in`; the decimal mark of the language where millimetres are read, a point for inches. */
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

const MM_PER_INCH = 25.4

export function figuresFor(language: Language, unit: Unit): Figures {
  const locale = language === 'es' ? 'es' : unit === 'in' ? 'en-US' : 'en-GB'
  const long = new Intl.DateTimeFormat(locale, { weekday: 'long', day: 'numeric', month: 'long', timeZone: 'UTC' })
  const short = new Intl.DateTimeFormat(locale, { day: 'numeric', month: 'long', timeZone: 'UTC' })
  const plain = (amountMm: number): string => {
    if (unit === 'in') return (amountMm / MM_PER_INCH).toFixed(2)
    const text = amountMm.toFixed(1)
    return language === 'es' ? text.replace('.', ',') : text
  }
  return {
    plain,
    amount: (amountMm) => `${plain(amountMm)} ${unit}`,
    day: (epochDay) => long.format(instantOf(epochDay)),
    shortDay: (epochDay) => short.format(instantOf(epochDay)),
    percent: (share) => `${Math.round(share * 100)} %`,
  }
}

function instantOf(epochDay: number): Date {
  return new Date(`${isoFromEpochDay(epochDay)}T00:00:00Z`)
}
