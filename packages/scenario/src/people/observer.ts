/** What one observer is like: when they read, how they write, what they forget. Shares and chances run from 0 to 1. */
import type { Unit } from '@gaugewright/science'

export interface Observer {
  name: string
  unit: Unit
  /** Usual minute of the day, and its spread. */
  readsAtMin: number
  spreadMin: number
  /** How much later on Saturdays and Sundays. */
  weekendLaterMin: number
  style: AmountStyle
  /** Hundredths of the unit that larger amounts are rounded to: 1 for what the gauge shows. */
  roundsTo: number
  /** Chance that an amount of up to three hundredths of an inch is written as nothing. */
  missesLight: number
  reportsTrace: boolean
  /** Chance of not looking on any day, and on a Saturday or Sunday. */
  forgets: number
  forgetsWeekend: number
  /** Chance of looking and not sending. */
  keepsBack: number
  /** After missed days: chance that the total is declared as one; that it is sent as one day's; that zeros fill the gap. */
  declaresTotal: number
  sendsTotalAsDay: number
  fillsWithZeros: number
  /** Times the network's mean rate of mistakes. */
  carelessness: number
  /** Usual minutes from reading to sending. */
  sendsAfterMin: number
  /** Chance that a day's reading waits until evening or the next morning. */
  sendsLate: number
}

/** `0.40`, `.40`, or `0.4`; and how nothing and a trace are written. */
export interface AmountStyle {
  leadingZero: boolean
  trailingZeros: boolean
  zero: string
  trace: string
}

/** Time in the network, and away from it. Epoch days, both ends included. */
export interface Service {
  openedOn: number
  closedOn: number | null
  /** Weeks without a reading that nobody announced. */
  dropouts: { firstDay: number; lastDay: number }[]
  absences: { firstDay: number; lastDay: number; isDeclared: boolean }[]
}
