/**
 * Bring files into the ledger: gauges first, then readings, all in one load. It is kept whole or not at all; with
 * `keepGood` the refused rows go to a file of their own and the rest is kept.
 */
import { observingDays, parseInstant } from '@gaugewright/science'
import type { FileKind, FileShape, IntakeFiles, RefusedOut } from '../ports/intakeFiles.ts'
import { IntakeRefusal } from '../ports/intakeRefusal.ts'
import type { LedgerLoad } from '../ports/ledger.ts'
import { LedgerError } from '../ports/ledgerError.ts'
import type { Ports } from '../ports/ports.ts'
import type { Answer } from './answer.ts'
import { GaugeBook } from './import/gaugeBook.ts'
import type { FileReport, ImportAsk, ImportReport } from './import/importAsk.ts'
import { importNetwork } from './import/importNetwork.ts'
import { openReadingStream } from './import/openReadingStream.ts'
import { SeenReadings } from './import/seenReadings.ts'
import { importGauges } from './importGauges.ts'
import { importReadings } from './importReadings.ts'

export async function importFiles(
  ports: Pick<Ports, 'ledger' | 'clock' | 'newId'>,
  files: IntakeFiles,
  ask: ImportAsk,
): Promise<Answer<ImportReport>> {
  const refusedOuts: RefusedOut[] = []
  let load: LedgerLoad | null = null
  try {
    const kinds = await kindsOf(files, ask)
    const unit = ask.unit ?? (kinds.some(({ kind }) => kind === 'readings') ? unitMissing() : 'mm')
    const { network, isNew } = importNetwork(await ports.ledger.networks(), ask, unit)
    const days = observingDays(network.timeZone, network.readingTime)
    if (days.kind === 'problem') throw new IntakeRefusal(days.code, `Found "${days.seen}".`, days.advice)
    const receivedAtUtc = ports.clock.nowUtc()
    const latestDay = days.days.dayOf(parseInstant(receivedAtUtc) ?? 0)
    const book = new GaugeBook(network.id, await ports.ledger.gauges(network.id))
    const seen = new SeenReadings()

    load = await ports.ledger.load(network.id)
    if (isNew) await load.saveNetwork(network)
    const reports: FileReport[] = []
    for (const { path, kind } of kinds) {
      const report: FileReport = { path, kind, gauges: null, readings: null, passedOver: {}, refused: null }
      reports.push(report)
      let shape: FileShape = { header: null, delimiter: ',' }
      const refusedFile = refusedFileFor(ask, path)
      const out = refusedFile === null ? null : files.refusedOut(refusedFile, () => shape)
      if (out !== null) refusedOuts.push(out)
      const onRefused = out === null ? undefined : out.add
      const onShape = (found: FileShape): void => {
        shape = found
      }
      if (kind === 'stations') {
        book.addStations(await files.readStations(path, { encoding: ask.encoding }))
        continue
      }
      if (kind === 'gauges') {
        const { saved, gauges } = await importGauges(files, load, { path, book, ask, onRefused, onShape })
        report.gauges = saved
        book.know(gauges)
      } else {
        const stream = await openReadingStream(files, kind, { path, unit, ask, book, seen, latestDay, onRefused })
        onShape(stream)
        const within = load
        report.gauges = { added: 0, changed: 0, same: 0 }
        const savedGauges = report.gauges
        report.readings = await importReadings(within, {
          stream,
          days: days.days,
          gaugeIds: book.ids,
          receivedAtUtc,
          newId: ports.newId,
          beforeBlock: async () => {
            const met = book.takeMet()
            if (met.length > 0) savedGauges.added += (await within.saveGauges(met)).added
          },
        })
        report.passedOver = stream.passedOver
      }
      if (out !== null && refusedFile !== null) {
        const rows = await out.finish()
        if (rows > 0) report.refused = { rows, file: refusedFile }
      }
    }
    await load.commit()
    load = null
    for (const out of refusedOuts) await out.place()
    return { ok: true, value: { network, networkIsNew: isNew, files: reports } }
  } catch (error) {
    await load?.rollback()
    for (const out of refusedOuts) await out.drop()
    if (error instanceof IntakeRefusal || error instanceof LedgerError) return { ok: false, problem: error.problem }
    throw error
  }
}

/** Stations and gauges before readings; otherwise in the order given. */
async function kindsOf(files: IntakeFiles, ask: ImportAsk): Promise<{ path: string; kind: FileKind }[]> {
  const kinds: { path: string; kind: FileKind }[] = []
  if (ask.stations !== undefined) kinds.push({ path: ask.stations, kind: 'stations' })
  for (const path of ask.paths) {
    const { columns, delimiter, encoding } = ask
    kinds.push({ path, kind: ask.kind ?? (await files.kindOf(path, { columns, delimiter, encoding })) })
  }
  const order: Record<FileKind, number> = { stations: 0, gauges: 1, readings: 2, dly: 2 }
  return kinds.sort((one, other) => order[one.kind] - order[other.kind])
}

function unitMissing(): never {
  throw new IntakeRefusal(
    'UNIT_MISSING',
    'The file does not say whether its amounts are inches or millimetres.',
    'Say it: --unit in or --unit mm.',
  )
}

/** One file of refused rows for each file brought; numbered by its name where there are several. */
function refusedFileFor(ask: ImportAsk, path: string): string | null {
  if (ask.keepGood === undefined) return null
  if (ask.paths.length === 1) return ask.keepGood
  const name = path.split(/[\\/]/).at(-1) ?? path
  return ask.keepGood.replace(
    /(\.[^./\\]*)?$/,
    (ending) => `-${name.replace(/\.(gz)$/, '').replace(/\.[^.]*$/, '')}${ending}`,
  )
}
