/** What a sentence about a habit needs to know, and the figures in it as the network's people write them. */
import {
  decimalMarkOf,
  formatAmount,
  type Habit,
  type Language,
  lightBelowMm,
  type Unit,
  umFromMm,
} from '@gaugewright/science'

export interface HabitAsk {
  language: Language
  /** The network's unit: every amount is said in it. */
  unit: Unit
  habit: Habit
  /** Step of the gauge, mm. */
  stepMm: number
  /** Monday 0 … Sunday 6 on which most undeclared totals end; null where no day stands out. */
  totalsEndOn: number | null
}

/** What is said of one habit: what is seen, and what may be done about it, kindly. */
export interface HabitWords {
  sentence: string
  advice: string
}

export interface HabitFigures {
  /** `0.5 mm`, `0.05 in`; `step` keeps all digits of a step. */
  step: (amountMm: number) => string
  light: string
  /** `0.9`, `2.4` */
  number: (value: number) => string
  /** `24 %`, its parts kept together. */
  percent: (share: number) => string
  /** `18 to 30 %` */
  percents: (low: number, high: number) => string
  /** `1.6 to 3.3` */
  numbers: (low: number, high: number) => string
  readings: string
}

const MM_PER_IN = 25.4
const to = { en: 'to', es: 'a' } as const

export function habitFigures({ language, unit, habit }: HabitAsk): HabitFigures {
  const mark = decimalMarkOf(language)
  const number = (value: number): string => value.toFixed(value < 9.95 ? 1 : 0).replace('.', mark)
  const whole = (share: number): string => String(Math.round(100 * Math.min(1, Math.max(0, share))))
  return {
    step: (amountMm) => {
      const text = unit === 'in' ? (amountMm / MM_PER_IN).toFixed(2) : String(Number(amountMm.toFixed(2)))
      return `${text.replace('.', mark)} ${unit}`
    },
    light: formatAmount({ amountUm: umFromMm(lightBelowMm), isTrace: false }, unit, language, 'full'),
    number,
    percent: (share) => `${whole(share)}\u00a0%`,
    percents: (low, high) => `${whole(low)} ${to[language]} ${whole(high)}\u00a0%`,
    numbers: (low, high) => `${number(low)} ${to[language]} ${number(high)}`,
    readings: new Intl.NumberFormat(language === 'es' ? 'es' : 'en').format(Math.round(habit.readings)),
  }
}

/** An offset of nearly a day is a matter of dates; less, of the hour. */
export const wholeDayFrom = 0.75

/** A share from which figures would only pretend to be exact. */
export const nearlyAll = 0.95

export function hoursOf(offsetDays: number): number {
  return Math.max(1, Math.round(Math.abs(offsetDays) * 24))
}
