/** Amounts, distances, odds and dates as the screens show them: the network's unit, the reader's language. */
import type { DayReview } from '@gaugewright/contract'
import { formatAmount } from '@gaugewright/science'
import type { Language, Words } from './messages.ts'

export type Unit = DayReview['network']['unit']
const umPer = { in: 25_400, mm: 1_000 } as const
const digits = { in: 2, mm: 1 } as const
const numbers = new Map<string, Intl.NumberFormat>()

function decimal(value: number, places: number, language: Language): string {
  const key = `${language}${places}`
  let format = numbers.get(key)
  if (!format) {
    format = new Intl.NumberFormat(language, {
      minimumFractionDigits: places,
      maximumFractionDigits: places,
      useGrouping: false,
    })
    numbers.set(key, format)
  }
  return format.format(value)
}

export type Format = ReturnType<typeof makeFormat>

export function makeFormat(words: Words, language: Language, unit: Unit, timeZone: string) {
  const bare = (mm: number) => decimal((mm * 1000) / umPer[unit], digits[unit], language)
  const reading = (um: number, isTrace: boolean, form: 'number' | 'full') =>
    formatAmount({ amountUm: um, isTrace }, unit, language, form)
  const withUnit = (mm: number) => `${bare(mm)} ${words.units[unit]}`
  const percent = (share: number) => {
    const p = share * 100
    if (share > 0.99 && share < 1) return fillPercent(words.oddsAbove, '99')
    if (share < 0.01 && share > 0) return fillPercent(words.oddsBelow, '1')
    return `${Math.round(p)} %`
  }
  const fillPercent = (message: string, value: string) => message.replace('{percent}', `${value} %`)
  const utc = (day: string) => new Date(`${day}T00:00:00Z`)
  const date = (options: Intl.DateTimeFormatOptions) => {
    const format = new Intl.DateTimeFormat(language, { timeZone: 'UTC', ...options })
    return (day: string) => format.format(utc(day))
  }
  const wholeNumbers = new Intl.NumberFormat(language, { maximumFractionDigits: 0 })
  const plainOdds = new Intl.NumberFormat(language, { maximumFractionDigits: 4, useGrouping: false })
  const time = new Intl.DateTimeFormat(language, { timeZone, dateStyle: 'medium', timeStyle: 'short' })
  return {
    unit,
    unitName: words.units[unit],
    /** A depth in mm as a number in the network's unit, without the unit. */
    bare,
    mm: withUnit,
    um: (um: number) => reading(um, false, 'full'),
    /** A reading: trace as a word, an absent amount as a dash. */
    amount: (um: number | null, isTrace: boolean) => (um === null ? '–' : reading(um, isTrace, 'full')),
    amountBare: (um: number | null, isTrace: boolean) => (um === null ? '–' : reading(um, isTrace, 'number')),
    /** An amount over its days, where these are more than one. */
    overDays: (um: number, isTrace: boolean, firstDay: string, lastDay: string) => {
      const amount = reading(um, isTrace, 'full')
      const count = Math.round((utc(lastDay).getTime() - utc(firstDay).getTime()) / 86_400_000) + 1
      return count > 1 ? words.overDays.replace('{amount}', amount).replace('{count}', String(count)) : amount
    },
    /** The time zone as people write it, such as CDT or GMT-2, in force on a day. */
    zone: (day: string) => {
      const parts = new Intl.DateTimeFormat(language, { timeZone, timeZoneName: 'short' }).formatToParts(utc(day))
      return parts.find(({ type }) => type === 'timeZoneName')?.value ?? timeZone
    },
    /** The smallest step the network reports, mm. */
    stepMm: unit === 'in' ? 0.254 : 0.1,
    /** A gauge's step or a few of them, every digit of it kept: `0.01 in`, `0.2 mm`, `1 mm`. */
    step: (mm: number) =>
      unit === 'in'
        ? `${decimal(mm / 25.4, 2, language)} ${words.units.in}`
        : `${decimal(mm, Number.isInteger(Number(mm.toFixed(1))) ? 0 : 1, language)} ${words.units.mm}`,
    percent,
    /** The same for narrow columns: >99 %, <1 %. */
    percentTight: (share: number) => {
      if (share > 0.99 && share < 1) return '>99 %'
      if (share < 0.01 && share > 0) return '<1 %'
      return `${Math.round(share * 100)} %`
    },
    number: (value: number, places: number) => decimal(value, places, language),
    /** A whole number, its thousands set apart. */
    whole: (value: number) => wholeNumbers.format(value),
    /** Odds as a rule is set by them: 0.98, 0.9976. */
    odds: (value: number) => plainOdds.format(value),
    /** A share with a tenth of a percent where that tells something. */
    percentFine: (share: number) => `${decimal(share * 100, share < 0.095 ? 1 : 0, language)} %`,
    distance: (m: number) =>
      unit === 'in'
        ? `${decimal(m / 1609.344, 1, language)} ${words.units.mi}`
        : `${decimal(m / 1000, 1, language)} ${words.units.km}`,
    height: (m: number) =>
      unit === 'in' ? `${Math.round(m / 0.3048)} ${words.units.ft}` : `${Math.round(m)} ${words.units.m}`,
    heightNumber: (m: number) => Math.round(unit === 'in' ? m / 0.3048 : m),
    compass: (deg: number) => words.compass[Math.round((((deg % 360) + 360) % 360) / 22.5) % 16] ?? '',
    dayLong: date({ weekday: 'long', day: 'numeric', month: 'long', year: 'numeric' }),
    dayPlain: date({ day: 'numeric', month: 'long', year: 'numeric' }),
    dayShort: date({ weekday: 'short', day: 'numeric', month: 'short' }),
    dayTiny: date({ weekday: 'short', day: 'numeric' }),
    instant: (utcText: string) => time.format(new Date(utcText)),
  }
}
