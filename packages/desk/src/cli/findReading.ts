/** The reading that a gauge gave for a day, by the code a person types. */
import { refused } from '../app/answer.ts'
import { reviewDay } from '../app/reviewDay.ts'
import type { Ports } from '../ports/ports.ts'
import { CommandStopped, valueFrom } from './commandStopped.ts'

/** @returns the reading's id. @throws {CommandStopped} where the gauge is not on the roll or gave no reading */
export async function findReading(ports: Ports, day: string, gauge: string): Promise<string> {
  const review = valueFrom(await reviewDay(ports, { day }))
  const row = review.roll.find((entry) => entry.code.toLowerCase() === gauge.toLowerCase())
  if (row === undefined) {
    throw new CommandStopped(
      refused(
        'GAUGE_NOT_ON_ROLL',
        `"${gauge}" on ${review.day}`,
        'Give a gauge code as "gaugewright day --all" shows it.',
      ).problem,
    )
  }
  if (row.readingId === null) {
    throw new CommandStopped(
      refused(
        'GAUGE_NOT_READ',
        `${row.code} (${row.name}) was ${row.answer} on ${review.day}`,
        'Choose a gauge that was read.',
      ).problem,
    )
  }
  return row.readingId
}
