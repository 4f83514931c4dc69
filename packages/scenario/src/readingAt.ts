/** One reading of a scenario, put together from its columns. */
import { isoFromEpochDay } from '@gaugewright/science'
import type { ScenarioReading, ScenarioReadings } from './scenario.ts'

/** @param index from 0 to `readings.count` - 1 */
export function readingAt(readings: ScenarioReadings, index: number): ScenarioReading {
  const firstDay = readings.firstDay[index]!
  const lastDay = readings.lastDay[index]!
  return {
    gauge: readings.gauge[index]!,
    kind: firstDay === lastDay ? 'daily' : 'multiday',
    firstDay: isoFromEpochDay(firstDay),
    lastDay: isoFromEpochDay(lastDay),
    startsAtUtc: utcText(readings.startsAtMs[index]!),
    endsAtUtc: utcText(readings.endsAtMs[index]!),
    receivedAtUtc: utcText(readings.receivedAtMs[index]!),
    text: readings.text[index]!,
    unit: readings.inMm[index] === 1 ? 'mm' : 'in',
    amountUm: readings.amountUm[index]!,
    isTrace: readings.isTrace[index] === 1,
    remark: readings.remarks.get(index) ?? null,
  }
}

/** RFC 3339 in UTC, without a clock or a Date: `2026-03-29T09:05:00.000Z`. */
export function utcText(ms: number): string {
  const epochDay = Math.floor(ms / 86_400_000)
  const rest = ms - epochDay * 86_400_000
  const two = (value: number) => String(value).padStart(2, '0')
  const hours = Math.floor(rest / 3_600_000)
  const minutes = Math.floor(rest / 60_000) % 60
  const seconds = Math.floor(rest / 1000) % 60
  const millis = String(rest % 1000).padStart(3, '0')
  return `${isoFromEpochDay(epochDay)}T${two(hours)}:${two(minutes)}:${two(seconds)}.${millis}Z`
}
