/**
 * The smallest step each gauge resolves, read off its own record: the coarsest of the usual steps of which nearly all
 * its wet amounts are multiples. Steps: 0.1 and 0.2 mm, 0.01 in, half and whole millimetres (common practice).
 */
import type { DailyTable } from '../network/dailyTable.ts'

const stepsMm = [1, 0.5, 0.254, 0.2, 0.1] as const
/** Share of wet readings that must fit a step; the rest may be mistakes. */
const fitShare = 0.93
const enoughReadings = 25

/** mm, Float64Array(gaugeCount); the network's commonest step where a gauge has too few readings to tell. */
export function findResolutionMm(history: DailyTable): Float64Array {
  const n = history.gaugeCount
  const wet = new Int32Array(n)
  const fits = new Int32Array(n * stepsMm.length)
  for (let i = 0; i < history.amountMm.length; i++) {
    if (history.spanDays[i] !== 1) continue
    const amountMm = history.amountMm[i]!
    if (!(amountMm > 0)) continue
    const g = i % n
    wet[g]! += 1
    for (let s = 0; s < stepsMm.length; s++) if (isMultiple(amountMm, stepsMm[s]!)) fits[g * stepsMm.length + s]! += 1
  }
  const networkWet = wet.reduce((a, b) => a + b, 0)
  const networkFits = stepsMm.map((_, s) => {
    let sum = 0
    for (let g = 0; g < n; g++) sum += fits[g * stepsMm.length + s]!
    return sum
  })
  const common = coarsestFit((s) => networkFits[s]!, networkWet)
  const out = new Float64Array(n)
  for (let g = 0; g < n; g++) {
    out[g] = wet[g]! < enoughReadings ? common : coarsestFit((s) => fits[g * stepsMm.length + s]!, wet[g]!)
  }
  return out
}

/**
 * Written decimals are at most two, so 0.76 stands for 3 hundredths of an inch (0.762 mm).
 * @param toleranceMm  to which the amount is known, beyond its written decimals
 */
export function isMultiple(amountMm: number, stepMm: number, toleranceMm = 0): boolean {
  return Math.abs(amountMm - Math.round(amountMm / stepMm) * stepMm) <= toleranceMm + 0.0051
}

function coarsestFit(fitsOf: (step: number) => number, wet: number): number {
  for (let s = 0; s < stepsMm.length; s++) if (wet > 0 && fitsOf(s) >= fitShare * wet) return stepsMm[s]!
  return 0.1
}
