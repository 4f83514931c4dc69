import type { IntakeFiles } from '../ports/intakeFiles.ts'
import { openDlyFile } from './dlyRows.ts'
import { fileKind } from './fileKind.ts'
import { readGaugeRows } from './gaugeRows.ts'
import { openReadingFile } from './readingRows.ts'
import { openRefusedOut } from './refusedOut.ts'
import { openShefFile } from './shefRows.ts'
import { readStationRows } from './stationRows.ts'

/** The files of this computer. */
export const fileIntake: IntakeFiles = {
  kindOf: fileKind,
  readGauges: readGaugeRows,
  openReadings: openReadingFile,
  openDly: async (path, ask) => openDlyFile(path, ask),
  openShef: openShefFile,
  readStations: readStationRows,
  refusedOut: openRefusedOut,
}
