import { formatInstant, type Reading } from '@gaugewright/science'
import type { AppendResult } from '../../ports/ledger.ts'
import { LedgerError } from '../../ports/ledgerError.ts'
import { checkReading } from '../checkReading.ts'
import { instantMs } from '../instantMs.ts'

/** The readings of one network. An interval is a gauge with a first and a last day. */
export class MemoryReadings {
  #byId = new Map<string, Reading>()
  /** Newest reading of each interval. */
  #newest = new Map<string, Reading>()
  /** Readings that another names in `supersedes`. */
  #superseded = new Set<string>()
  /** Current readings in the order of `ofDays`; made when asked for. */
  #sorted: Reading[] | null = null

  copy(): MemoryReadings {
    const copy = new MemoryReadings()
    copy.#byId = new Map(this.#byId)
    copy.#newest = new Map(this.#newest)
    copy.#superseded = new Set(this.#superseded)
    return copy
  }

  get stored(): number {
    return this.#byId.size
  }

  append(readings: readonly Reading[]): AppendResult {
    const result: AppendResult = { stored: 0, already: 0, superseding: 0 }
    for (const reading of readings) this.#appendOne(reading, result)
    this.#sorted = null
    return result
  }

  ofDays(fromDay: string, toDay: string): Reading[] {
    this.#sorted ??= [...this.#byId.values()].filter(({ id }) => !this.#superseded.has(id)).sort(byDayThenGauge)
    return this.#sorted
      .filter(({ lastDay }) => lastDay >= fromDay && lastDay <= toDay)
      .map((reading) => ({ ...reading }))
  }

  byId(id: string): { reading: Reading; superseded: Reading[] } | null {
    const reading = this.#byId.get(id)
    if (reading === undefined) return null
    const superseded: Reading[] = []
    for (let next = reading.supersedes; next !== null; ) {
      const earlier = this.#byId.get(next)
      if (earlier === undefined) break
      superseded.push({ ...earlier })
      next = earlier.supersedes
    }
    return { reading: { ...reading }, superseded }
  }

  #appendOne(reading: Reading, result: AppendResult): void {
    checkReading(reading)
    const interval = `${reading.gaugeId}\n${reading.firstDay}\n${reading.lastDay}`
    const newest = this.#newest.get(interval)
    if (newest?.amountUm === reading.amountUm && newest.isTrace === reading.isTrace) {
      result.already++
      return
    }
    if (this.#byId.has(reading.id)) {
      throw new LedgerError('ID_TAKEN', 'The reading has an id that another reading has.', 'Give each a fresh id.')
    }
    const supersedes = this.#supersedes(reading, newest)
    const stored: Reading = {
      ...reading,
      kind: reading.firstDay === reading.lastDay ? 'daily' : 'multiday',
      startsAtUtc: formatInstant(instantMs(reading.startsAtUtc)),
      endsAtUtc: formatInstant(instantMs(reading.endsAtUtc)),
      receivedAtUtc: formatInstant(instantMs(reading.receivedAtUtc)),
      supersedes,
    }
    this.#byId.set(stored.id, stored)
    this.#newest.set(interval, stored)
    result.stored++
    if (supersedes === null) return
    this.#superseded.add(supersedes)
    result.superseding++
  }

  #supersedes(reading: Reading, newest: Reading | undefined): string | null {
    if (newest !== undefined) return this.#superseded.has(newest.id) ? null : newest.id
    if (reading.supersedes === null) return null
    if (this.#byId.get(reading.supersedes)?.gaugeId !== reading.gaugeId) {
      throw new LedgerError(
        'READING_UNKNOWN',
        `The reading ${reading.id} corrects "${reading.supersedes}", which is not a reading of the same gauge.`,
        'Look the reading up again.',
      )
    }
    if (this.#superseded.has(reading.supersedes)) {
      throw new LedgerError(
        'ALREADY_SUPERSEDED',
        'The reading that is to be corrected has been corrected already.',
        'Look the reading up again and correct the newest one.',
      )
    }
    return reading.supersedes
  }
}

function byDayThenGauge(one: Reading, other: Reading): number {
  if (one.lastDay !== other.lastDay) return one.lastDay < other.lastDay ? -1 : 1
  if (one.gaugeId !== other.gaugeId) return one.gaugeId < other.gaugeId ? -1 : 1
  return one.firstDay < other.firstDay ? -1 : 1
}
