/** The accepted record as CSV, in the form that `check`, `expect` and `import` read: gauge, day, amount, first_day, text. */
import type { ExportAcceptedAsk } from '@gaugewright/contract'
import { epochDayFromIso, isoFromEpochDay, type Unit } from '@gaugewright/science'
import type { Ledger } from '../ports/ledger.ts'
import type { Ports } from '../ports/ports.ts'
import { type Answer, answered, refused } from './answer.ts'
import { csvField } from './csvField.ts'
import { acceptedRecord } from './morning/acceptedRecord.ts'

export interface AcceptedExport {
  unit: Unit
  fromDay: string
  toDay: string
  /** Blocks of whole lines, the header first. */
  lines: AsyncIterable<string>
}

/** Days read at once: memory stays flat however long the record is. */
const BLOCK_DAYS = 31

export async function exportAccepted(
  ports: Pick<Ports, 'ledger'>,
  ask: ExportAcceptedAsk,
): Promise<Answer<AcceptedExport>> {
  const network = (await ports.ledger.networks())[0]
  const range = network === undefined ? null : await ports.ledger.dayRange(network.id)
  if (network === undefined || range === null) {
    return refused(
      'LEDGER_EMPTY',
      'the ledger holds no readings yet',
      'Import readings first, or run "gaugewright demo".',
    )
  }
  const fromDay = ask.from ?? range.firstDay
  const toDay = ask.to ?? range.lastDay
  if (fromDay > toDay) {
    return refused('DAYS_OUT_OF_ORDER', `from ${fromDay} to ${toDay}`, 'Give the earlier day first.')
  }
  const unit = ask.unit ?? network.unit
  return answered({ unit, fromDay, toDay, lines: linesOf(ports.ledger, network.id, fromDay, toDay, unit) })
}

async function* linesOf(
  ledger: Ledger,
  networkId: string,
  fromDay: string,
  toDay: string,
  unit: Unit,
): AsyncGenerator<string> {
  yield 'gauge,day,amount,first_day,text\n'
  const codeOf = new Map((await ledger.gauges(networkId)).map((gauge) => [gauge.id, gauge.code]))
  const last = epochDayFromIso(toDay)
  for (let first = epochDayFromIso(fromDay); first <= last; first += BLOCK_DAYS) {
    const from = isoFromEpochDay(first)
    const to = isoFromEpochDay(Math.min(last, first + BLOCK_DAYS - 1))
    const readings = await ledger.readings(networkId, from, to)
    const decisions = await ledger.decisions(networkId, from, to)
    let block = ''
    for (const entry of acceptedRecord(readings, decisions)) {
      const code = codeOf.get(entry.reading.gaugeId) ?? entry.reading.gaugeId
      const amount = entry.isTrace ? 'T' : exactAmount(entry.amountUm, unit)
      const firstDay = entry.firstDay === entry.lastDay ? '' : entry.firstDay
      block += `${csvField(code)},${entry.lastDay},${amount},${firstDay},${csvField(entry.reading.text)}\n`
    }
    if (block !== '') yield block
  }
}

/** Every digit that the ledger holds: `12.446` mm, `0.49` in; a depth that is no whole 0.01 in gets more digits. */
export function exactAmount(amountUm: number, unit: Unit): string {
  const UM_PER_HUNDREDTH_INCH = 254
  if (unit === 'mm') return String(amountUm / 1000)
  if (amountUm % UM_PER_HUNDREDTH_INCH === 0) return (amountUm / UM_PER_HUNDREDTH_INCH / 100).toFixed(2)
  return (amountUm / UM_PER_HUNDREDTH_INCH / 100).toFixed(6).replace(/0+$/, '')
}
