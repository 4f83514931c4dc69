/** Gauges from a file into a load. */
import type { FileShape, IntakeFiles, RefusedRow } from '../ports/intakeFiles.ts'
import { IntakeRefusal } from '../ports/intakeRefusal.ts'
import type { Gauge, LedgerLoad, SaveResult } from '../ports/ledger.ts'
import type { GaugeBook } from './import/gaugeBook.ts'
import { gaugeFromRow } from './import/gaugeFromRow.ts'
import type { ImportAsk } from './import/importAsk.ts'

export interface ImportGaugesAsk {
  path: string
  book: GaugeBook
  ask: Pick<ImportAsk, 'columns' | 'delimiter' | 'encoding' | 'onProgress'>
  onRefused: ((row: RefusedRow) => void) | undefined
  onShape: (shape: FileShape) => void
}

/** @throws {IntakeRefusal} as IntakeFiles.readGauges; POSITION_ON_PLANE */
export async function importGauges(
  files: Pick<IntakeFiles, 'readGauges'>,
  load: Pick<LedgerLoad, 'saveGauges'>,
  { path, book, ask, onRefused, onShape }: ImportGaugesAsk,
): Promise<{ saved: SaveResult; gauges: Gauge[] }> {
  const { columns, delimiter, encoding } = ask
  const file = await files.readGauges(path, {
    columns,
    delimiter,
    encoding,
    onProgress: (done, total) => ask.onProgress?.(path, done, total),
    onRefused,
    onShape,
  })
  if (file.plane === 'metres') {
    throw new IntakeRefusal(
      'POSITION_ON_PLANE',
      `${path} gives positions in metres on a plane; a ledger needs latitude and longitude.`,
      'Add the columns lat and lon (check and expect do read metres).',
    )
  }
  const gauges = file.rows.map((row) => gaugeFromRow(row, book.networkId, book.byCode(row.id)))
  return { saved: await load.saveGauges(gauges), gauges }
}
