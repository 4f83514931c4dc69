import type { AmountLaw } from './amountLaw.ts'
import type { Source } from './sources.ts'

/** Quantile (mm) of the true amount if the source is right: the expected law within the source's own range. */
export function impliedMm(law: AmountLaw, source: Source, level: number): number {
  if (source.highMm <= 0) return 0
  const isNarrow = source.lowMm > 0 && source.highMm - source.lowMm < 2
  if (isNarrow) return source.lowMm + level * (source.highMm - source.lowMm)
  const below = source.lowMm <= 0 ? 0 : law.mass(-1, source.lowMm)
  const inside = law.mass(source.lowMm <= 0 ? -1 : source.lowMm, source.highMm)
  const amountMm = law.quantile(Math.min(1 - 1e-9, Math.max(1e-9, below + level * inside)))
  return Math.min(source.highMm, Math.max(source.lowMm, amountMm, 0))
}
