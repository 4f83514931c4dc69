import {
  arrangeReadings,
  epochDayFromIso,
  isoFromEpochDay,
  type Reading,
  wordArrangementNote,
} from '@gaugewright/science'
import { type Morning, windowDays } from './loadMorning.ts'

/**
 * Totals, gaps and overlaps among one gauge's readings on the days around the morning, in the network's language. The
 * days after the last one of the record are not yet gaps.
 */
export function arrangementNotes(morning: Morning, gaugeId: string): string[] {
  const { network, epochDay, range } = morning
  const toDay = Math.min(epochDay + windowDays.after, epochDayFromIso(range.lastDay))
  const readings = morning.readings.filter((reading: Reading) => reading.gaugeId === gaugeId)
  const { notes } = arrangeReadings(readings, {
    fromDay: isoFromEpochDay(epochDay - windowDays.before),
    toDay: isoFromEpochDay(toDay),
  })
  return notes.map((note) => wordArrangementNote(note, network.unit, network.language))
}
