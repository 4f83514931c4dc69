/**
 * Which of several values for one station, code and time holds. The first is kept; a value takes the place of a missing
 * one, a missing one never that of a value; a revision takes the place of anything. [SHEF2012] 5.1.4, 5.1.6.
 */
import type { ShefDatum, ShefValue } from './shef.ts'

/** `first kept`: another amount without being a revision, which does not hold. */
export type Settled = 'new' | 'same' | 'replaced' | 'first kept'

export class ShefSettler<V extends ShefValue = ShefValue> {
  readonly #held = new Map<string, V>()

  add(value: V): Settled {
    const key = keyOf(value)
    const before = this.#held.get(key)
    if (before === undefined) {
      this.#held.set(key, value)
      return 'new'
    }
    if (value.isRevision || (before.datum.kind === 'missing' && value.datum.kind !== 'missing')) {
      this.#held.set(key, value)
      return 'replaced'
    }
    if (isSameDatum(before.datum, value.datum) && before.units === value.units) return 'same'
    return 'first kept'
  }

  /** In the order in which their stations, codes and times first came. */
  values(): V[] {
    return [...this.#held.values()]
  }
}

export function settledShef<V extends ShefValue>(values: readonly V[]): V[] {
  const settler = new ShefSettler<V>()
  for (const value of values) settler.add(value)
  return settler.values()
}

function keyOf(value: ShefValue): string {
  const span = value.variable === null ? '' : `${value.variable.unit}${value.variable.count}`
  return `${value.location} ${value.code} ${value.observedAtUtcMs} ${span} ${value.createdAtUtcMs ?? ''}`
}

function isSameDatum(one: ShefDatum, other: ShefDatum): boolean {
  if (one.kind !== other.kind) return false
  return one.kind !== 'number' || other.kind !== 'number' || one.value === other.value
}
