/** One delivery of files while it is being taken: what all of its files share, and each file in its turn. */
import type { EpochDay, ObservingDays, Unit } from '@gaugewright/science'
import type { FileKind, FileShape, IntakeFiles, RefusedOut } from '../../ports/intakeFiles.ts'
import type { LedgerLoad, NetworkSettings } from '../../ports/ledger.ts'
import { importGauges } from '../importGauges.ts'
import { importReadings } from '../importReadings.ts'
import type { GaugeBook } from './gaugeBook.ts'
import type { FileReport, ImportAsk } from './importAsk.ts'
import { openReadingStream } from './openReadingStream.ts'
import { refusedFileFor } from './refusedFileFor.ts'
import { SeenReadings } from './seenReadings.ts'

export interface DeliveryTerms {
  files: IntakeFiles
  load: LedgerLoad
  ask: ImportAsk
  unit: Unit
  days: ObservingDays
  latestDay: EpochDay
  book: GaugeBook
  network: NetworkSettings
  receivedAtUtc: string
  newId: () => string
}

export class Delivery {
  readonly #terms: DeliveryTerms
  readonly #seen = new SeenReadings()
  readonly #outs: RefusedOut[] = []

  constructor(terms: DeliveryTerms) {
    this.#terms = terms
  }

  /** @throws {IntakeRefusal | LedgerError} then the delivery must be dropped */
  async take(path: string, kind: FileKind): Promise<FileReport> {
    const { ask, book, files } = this.#terms
    const report: FileReport = { path, kind, gauges: null, readings: null, passedOver: {}, refused: null }
    if (kind === 'stations') {
      book.addStations(await files.readStations(path, { encoding: ask.encoding }))
      return report
    }
    const refusedFile = refusedFileFor(ask, path)
    if (refusedFile === null) {
      await this.#takeRows(report, kind, undefined, () => {})
      return report
    }
    let shape: FileShape = { header: null, delimiter: ',' }
    const out = files.refusedOut(refusedFile, () => shape)
    this.#outs.push(out)
    await this.#takeRows(report, kind, out.add, (found) => {
      shape = found
    })
    const rows = await out.finish()
    if (rows > 0) report.refused = { rows, file: refusedFile }
    return report
  }

  /** After the load is committed: the files of refused rows get their names. */
  async placeRefused(): Promise<void> {
    for (const out of this.#outs) await out.place()
  }

  async drop(): Promise<void> {
    for (const out of this.#outs) await out.drop()
  }

  async #takeRows(
    report: FileReport,
    kind: Exclude<FileKind, 'stations'>,
    onRefused: RefusedOut['add'] | undefined,
    onShape: (shape: FileShape) => void,
  ): Promise<void> {
    const { ask, book, files, load, unit, latestDay } = this.#terms
    const { path } = report
    if (kind === 'gauges') {
      const { saved, gauges } = await importGauges(files, load, { path, book, ask, onRefused, onShape })
      report.gauges = saved
      book.know(gauges)
      return
    }
    const seen = this.#seen
    const { days, network, receivedAtUtc } = this.#terms
    const of = { path, unit, ask, book, seen, latestDay, onRefused, days, network, receivedAtUtc }
    const stream = await openReadingStream(files, kind, of)
    onShape(stream)
    const met = { added: 0, changed: 0, same: 0 }
    report.readings = await importReadings(load, {
      stream,
      days,
      gaugeIds: book.ids,
      receivedAtUtc,
      newId: this.#terms.newId,
      beforeBlock: async () => {
        const gauges = book.takeMet()
        if (gauges.length > 0) met.added += (await load.saveGauges(gauges)).added
      },
    })
    report.gauges = met
    report.passedOver = stream.passedOver
  }
}
