/** Amounts, days and odds as the network's people write them. Words are in english.ts and spanish.ts. */
import { decimalMarkOf, isoFromEpochDay, type Language, type Unit } from '@gaugewright/science'

export interface Figures {
  /** What was typed or follows from it: every digit kept, none added. `12.4 mm`, `470 mm`, `0.49 in`, `12,4 mm`. */
  exact: (amountMm: number) => string
  /** An estimate, to two figures but never finer than a gauge is read: `49 mm`, `8.3 mm`, `1.3 in`. */
  about: (amountMm: number) => string
  /** The figure of `about` alone: `49`. */
  aboutPlain: (amountMm: number) => string
  /**
   * An amount of the reading itself or of what it may have been, in the unit it was typed in, with the network's beside it
   * where that is another: `96.4 mm (3.79 in)`.
   */
  own: (amountMm: number, form: keyof typeof texts) => string
  /** A plain figure as it was typed, in its unit: `0.0059 in`; any other text by its amount. */
  typed: (text: string, amountMm: number) => string
  /** As `read`, in a unit of choice, with the network's beside it where that is another. */
  readIn: (amountMm: number, unit: Unit) => string
  /** `Tuesday 3 March`, `Tuesday, March 3`, `martes 3 de marzo`. */
  day: (epochDay: number) => string
  /** `1 to 3 March`, `March 1 to 3`, `del 1 al 3 de marzo`. */
  days: (firstDay: number, lastDay: number) => string
  /** `72 %`, and `more than 99 %` rather than 100. */
  percent: (share: number) => string
}

/** Decimals that a reading of the unit is written with, and the most that an exact figure is given. */
const usualDecimals = { mm: 0, in: 2 } as const
const MOST_DECIMALS = 3
export const mmPer = { mm: 1, in: 25.4 } as const
/** Between two days of a range, with the thin spaces that some locales set around it. */
const dash = /\s*–\s*/
const bounds = { en: ['less than', 'more than'], es: ['menos del', 'más del'] } as const

/** @param typedUnit  of the reading in question, where it is not the network's */
export function figuresFor(language: Language, unit: Unit, typedUnit: Unit = unit): Figures {
  const mark = decimalMarkOf(language)
  const locale = language === 'es' ? 'es' : unit === 'in' ? 'en-US' : 'en-GB'
  const { long, short } = dateFormats(locale)
  const aboutPlain = (amountMm: number): string => aboutText(amountMm, unit).replace('.', mark)
  const inUnit = (amountMm: number, form: keyof typeof texts, of: Unit): string =>
    `${texts[form](amountMm, of).replace('.', mark)} ${of}`
  const inBoth = (amountMm: number, form: keyof typeof texts, of: Unit): string =>
    of === unit ? inUnit(amountMm, form, of) : `${inUnit(amountMm, form, of)} (${inUnit(amountMm, 'read', unit)})`
  const [below, above] = bounds[language]
  return {
    exact: (amountMm) => inUnit(amountMm, 'exact', unit),
    about: (amountMm) => inUnit(amountMm, 'about', unit),
    aboutPlain,
    own: (amountMm, form) => inBoth(amountMm, form, typedUnit),
    typed: (text, amountMm) => {
      if (!/^\d+([.,]\d+)?$/.test(text)) return inBoth(amountMm, 'exact', typedUnit)
      const figure = `${text.replace(/[.,]/, mark)} ${typedUnit}`
      return typedUnit === unit ? figure : `${figure} (${inUnit(amountMm, 'read', unit)})`
    },
    readIn: (amountMm, of) => inBoth(amountMm, 'read', of),
    // Running Spanish has no comma between the weekday and the date.
    day: (epochDay) => (language === 'es' ? long.format(at(epochDay)).replace(',', '') : long.format(at(epochDay))),
    days: (firstDay, lastDay) => {
      const range = short.formatRange(at(firstDay), at(lastDay))
      return language === 'es' ? `del ${range.replace(dash, ' al ')}` : range.replace(dash, ' to ')
    },
    percent: (share) =>
      share < 0.01 ? `${below} 1 %` : share > 0.99 ? `${above} 99 %` : `${Math.round(share * 100)} %`,
  }
}

const formats = new Map<string, { long: Intl.DateTimeFormat; short: Intl.DateTimeFormat }>()

/** Kept, since a formatter takes longer to make than a thousand dates to write. */
function dateFormats(locale: string): { long: Intl.DateTimeFormat; short: Intl.DateTimeFormat } {
  const kept = formats.get(locale)
  if (kept !== undefined) return kept
  const date = { day: 'numeric', month: 'long', timeZone: 'UTC' } as const
  const made = {
    long: new Intl.DateTimeFormat(locale, { weekday: 'long', ...date }),
    short: new Intl.DateTimeFormat(locale, date),
  }
  formats.set(locale, made)
  return made
}

/** @returns `12.4`, `470`, `0.50`, with a point whatever the language; a trace of rounding in the third decimal is dropped */
export function exactText(amountMm: number, unit: Unit): string {
  const value = Math.max(0, amountMm) / mmPer[unit]
  for (let decimals: number = usualDecimals[unit]; decimals < MOST_DECIMALS; decimals++) {
    const text = value.toFixed(decimals)
    if (Math.abs(Number(text) - value) < 0.0006) return text
  }
  return value.toFixed(MOST_DECIMALS)
}

function readText(amountMm: number, unit: Unit): string {
  const value = Math.max(0, amountMm) / mmPer[unit]
  return unit === 'in' ? value.toFixed(2) : String(Number(value.toFixed(1)))
}

/** Inches come back from files in hundredths of a millimetre. */
const readableWithinMm = { mm: 0.0006, in: 0.006 } as const

/** Whether a gauge read in the unit can show the amount: whole tenths of a millimetre or hundredths of an inch. */
export function isReadable(amountMm: number, unit: Unit): boolean {
  return Math.abs(Number(readText(amountMm, unit)) * mmPer[unit] - amountMm) < readableWithinMm[unit]
}

/** The value that `about` shows, in the unit. Comparisons in words are made with it, so that no sentence contradicts itself. */
export function aboutValue(amountMm: number, unit: Unit): number {
  return Number(aboutText(amountMm, unit))
}

function aboutText(amountMm: number, unit: Unit): string {
  const value = Math.max(0, amountMm) / mmPer[unit]
  const finest = unit === 'in' ? 2 : 1
  if (Number(value.toFixed(finest)) === 0) return '0'
  const decimals = Math.min(finest, 1 - Math.floor(Math.log10(value)))
  if (decimals <= 0) return String(Number(value.toPrecision(2)))
  return unit === 'in' ? value.toFixed(decimals) : String(Number(value.toFixed(decimals)))
}

/** `read`: what follows by conversion, to the step that gauges are read to: `18.5`, `0.15`. */
const texts = { exact: exactText, read: readText, about: aboutText } as const

function at(epochDay: number): Date {
  return new Date(`${isoFromEpochDay(epochDay)}T00:00:00Z`)
}
