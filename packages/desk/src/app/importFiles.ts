/**
 * Bring files into the ledger: gauges first, then readings, all in one load. It is kept whole or not at all; with
 * `keepGood` the refused rows go to a file of their own and the rest is kept.
 */
import { observingDays, parseInstant, type Unit } from '@gaugewright/science'
import type { FileKind, IntakeFiles } from '../ports/intakeFiles.ts'
import { IntakeRefusal } from '../ports/intakeRefusal.ts'
import { LedgerError } from '../ports/ledgerError.ts'
import type { Ports } from '../ports/ports.ts'
import { type Answer, answered } from './answer.ts'
import { Delivery } from './import/delivery.ts'
import { GaugeBook } from './import/gaugeBook.ts'
import type { FileReport, ImportAsk, ImportReport } from './import/importAsk.ts'
import { importNetwork } from './import/importNetwork.ts'

export async function importFiles(
  ports: Pick<Ports, 'ledger' | 'clock' | 'newId'>,
  files: IntakeFiles,
  ask: ImportAsk,
): Promise<Answer<ImportReport>> {
  try {
    return answered(await takeFiles(ports, files, ask))
  } catch (error) {
    if (error instanceof IntakeRefusal || error instanceof LedgerError) return { ok: false, problem: error.problem }
    throw error
  }
}

async function takeFiles(
  { ledger, clock, newId }: Pick<Ports, 'ledger' | 'clock' | 'newId'>,
  files: IntakeFiles,
  ask: ImportAsk,
): Promise<ImportReport> {
  const kinds = await kindsOf(files, ask)
  if (ask.readingsOnly === true) refuseOtherKinds(kinds)
  const unit = ask.unit ?? (kinds.some(({ kind }) => kind === 'readings') ? unitMissing() : usualUnit(kinds))
  const { network, isNew } = importNetwork(await ledger.networks(), ask, unit)
  const answer = observingDays(network.timeZone, network.readingTime)
  if (answer.kind === 'problem') throw new IntakeRefusal(answer.code, `Found "${answer.seen}".`, answer.advice)
  const { days } = answer
  const receivedAtUtc = clock.nowUtc()
  const latestDay = days.dayOf(parseInstant(receivedAtUtc) ?? 0)
  const book = new GaugeBook(network.id, await ledger.gauges(network.id))

  const load = await ledger.load(network.id)
  const delivery = new Delivery({ files, load, ask, unit, days, latestDay, book, receivedAtUtc, newId, network })
  const reports: FileReport[] = []
  try {
    if (isNew) await load.saveNetwork(network)
    for (const { path, kind } of kinds) reports.push(await delivery.take(path, kind))
    if (ask.delivery !== undefined) {
      await load.keepDelivery({ ...ask.delivery, receivedAtUtc, answer: JSON.stringify(reports) })
    }
    await load.commit()
  } catch (error) {
    await load.rollback()
    await delivery.drop()
    throw error
  }
  await delivery.placeRefused()
  return { network, networkIsNew: isNew, files: reports }
}

function refuseOtherKinds(kinds: readonly { path: string; kind: FileKind }[]): void {
  if (kinds.length === 0)
    throw new IntakeRefusal('NO_READINGS', 'It brings no table of readings and no SHEF.', 'Attach one.')
  const other = kinds.find(({ kind }) => kind === 'gauges' || kind === 'stations')
  if (other === undefined) return
  throw new IntakeRefusal(
    'FILE_KIND_UNCLEAR',
    `Found ${other.kind}, wanted readings.`,
    'Send readings by this way alone.',
  )
}

/** Stations and gauges before readings; otherwise in the order given. */
async function kindsOf(files: IntakeFiles, ask: ImportAsk): Promise<{ path: string; kind: FileKind }[]> {
  const kinds: { path: string; kind: FileKind }[] = []
  if (ask.stations !== undefined) kinds.push({ path: ask.stations, kind: 'stations' })
  for (const path of ask.paths) {
    const { columns, delimiter, encoding } = ask
    kinds.push({ path, kind: ask.kind ?? (await files.kindOf(path, { columns, delimiter, encoding })) })
  }
  const order: Record<FileKind, number> = { stations: 0, gauges: 1, readings: 2, dly: 2, shef: 2 }
  return kinds.sort((one, other) => order[one.kind] - order[other.kind])
}

/** Only asked for a network that is made: SHEF is in inches unless it says otherwise. */
function usualUnit(kinds: readonly { kind: FileKind }[]): Unit {
  return kinds.some(({ kind }) => kind === 'shef') ? 'in' : 'mm'
}

function unitMissing(): never {
  throw new IntakeRefusal(
    'UNIT_MISSING',
    'The file does not say whether its amounts are inches or millimetres.',
    'Say it: --unit in or --unit mm.',
  )
}
