/**
 * Which gauge and interval a delivery has given already, and with what amount: a file may repeat itself, but not
 * contradict itself. A hash table with open addressing in typed arrays: 12 to 24 bytes a reading, whatever their order.
 */
import type { EpochDay } from '@gaugewright/science'
import type { Noted } from '../../ports/intakeFiles.ts'

const DAYS = 2 ** 22
const SPANS = 2 ** 8
/** Days before 1970 that still give a positive number; the year 0 is 719,528 days before. */
const DAY_OFFSET = 1_000_000
const TRACE = -1

export class SeenReadings {
  #keys = new Float64Array(1 << 12).fill(Number.NaN)
  #amounts = new Int32Array(1 << 12)
  #count = 0

  /**
   * Note a reading.
   * @param spanDays 1 to 255
   * @param amountUm below 2^31 (two kilometres)
   * @returns `new`, `same` where it was given with this amount, `other` where it was given with another (and stays so)
   */
  note(gauge: number, lastDay: EpochDay, spanDays: number, amountUm: number, isTrace: boolean): Noted {
    if (this.#count * 2 >= this.#keys.length) this.#grow()
    const key = (gauge * DAYS + lastDay + DAY_OFFSET) * SPANS + spanDays
    const amount = isTrace ? TRACE : amountUm
    const slot = this.#slot(key)
    if (Number.isNaN(this.#keys[slot])) {
      this.#keys[slot] = key
      this.#amounts[slot] = amount
      this.#count++
      return 'new'
    }
    return this.#amounts[slot] === amount ? 'same' : 'other'
  }

  /** Where a key is, or where it belongs. */
  #slot(key: number): number {
    const mask = this.#keys.length - 1
    // Multiplicative hashing of the two halves of the key, which is a whole number below 2^53.
    const high = Math.floor(key / 2 ** 26)
    const low = key - high * 2 ** 26
    let slot = ((Math.imul(low, 0x9e3779b1) ^ Math.imul(high, 0x85ebca6b)) >>> 7) & mask
    for (;;) {
      const seen = this.#keys[slot] as number
      if (Number.isNaN(seen) || seen === key) return slot
      slot = (slot + 1) & mask
    }
  }

  #grow(): void {
    const [keys, amounts] = [this.#keys, this.#amounts]
    this.#keys = new Float64Array(keys.length * 2).fill(Number.NaN)
    this.#amounts = new Int32Array(keys.length * 2)
    for (let index = 0; index < keys.length; index++) {
      const key = keys[index] as number
      if (Number.isNaN(key)) continue
      const slot = this.#slot(key)
      this.#keys[slot] = key
      this.#amounts[slot] = amounts[index] as number
    }
  }
}
