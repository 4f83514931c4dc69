/** What a careful or a habitual observer writes down for the water in the gauge. */
import type { Observer } from '../people/observer.ts'
import type { Random } from '../random/random.ts'

export const MM_PER_INCH = 25.4
/** Less than this in the gauge is not noticed. mm. */
const UNNOTICED_MM = 0.04
/** Step of the millimetre gauges, in hundredths of a mm. */
const MM_STEP = 20

export interface WrittenAmount {
  /** Hundredths of the observer's unit. */
  hundredths: number
  isTrace: boolean
}

/** Read to the gauge's step, with the small errors of an eye at a meniscus; no habits. */
export function readGauge(mm: number, observer: Observer, random: Random): WrittenAmount {
  if (mm < UNNOTICED_MM) return { hundredths: 0, isTrace: false }
  const step = observer.unit === 'mm' ? MM_STEP : 1
  const exact = observer.unit === 'mm' ? mm * 100 : (mm / MM_PER_INCH) * 100
  if (exact < step / 2) return { hundredths: 0, isTrace: true }
  const blurred = exact * (1 + 0.006 * random.normal()) + 0.3 * step * random.normal()
  return { hundredths: Math.max(step, Math.round(blurred / step) * step), isTrace: false }
}

/** The same with the observer's habits: rounding, light rain let pass, traces not told. */
export function writeDown(seen: WrittenAmount, observer: Observer, random: Random): WrittenAmount {
  if (seen.isTrace) {
    const isTold = observer.reportsTrace && !random.chance(observer.missesLight)
    return { hundredths: 0, isTrace: isTold }
  }
  const light = observer.unit === 'mm' ? 60 : 3
  if (seen.hundredths > 0 && seen.hundredths <= light && random.chance(observer.missesLight)) {
    return { hundredths: 0, isTrace: false }
  }
  const { roundsTo } = observer
  if (roundsTo > 1 && seen.hundredths >= 1.5 * roundsTo && random.chance(0.8)) {
    return { hundredths: Math.round(seen.hundredths / roundsTo) * roundsTo, isTrace: false }
  }
  return seen
}
