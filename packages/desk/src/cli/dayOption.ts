/** A day given on the command line. */
import { parseIsoDay } from '@gaugewright/science'
import { InvalidArgumentError } from 'commander'

/** @returns epoch day. @throws {InvalidArgumentError} which the command line answers with exit code 2 */
export function epochDayOption(text: string): number {
  const day = parseIsoDay(text)
  if (day === null) throw new InvalidArgumentError('Give a real day as YYYY-MM-DD.')
  return day
}

/** The same, kept as text. */
export function isoDayOption(text: string): string {
  epochDayOption(text)
  return text
}

/** A whole number within limits. */
export function wholeNumberOption(least: number, most: number): (text: string) => number {
  return (text) => {
    const value = Number(text)
    if (!/^\d+$/.test(text) || value < least || value > most) {
      throw new InvalidArgumentError(`Give a whole number from ${least} to ${most}.`)
    }
    return value
  }
}
