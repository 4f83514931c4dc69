/** What a judgement of many days says of each gauge's ways: expected numbers of mistakes of some kinds, by gauge. */
import type { Judgement } from '../mistakes/judgement.ts'
import type { Stretch } from '../mistakes/sequence.ts'

export interface JudgedSums {
  /** Daily reports judged. */
  reports: Float64Array
  /** Expected numbers of stretches dated a day late or early, of undeclared totals, and of single-day mistakes. */
  shifted: Float64Array
  carried: Float64Array
  alone: Float64Array
  /** Expected undeclared totals by the weekday on which they end, Monday first; index gauge * 7 + weekday. */
  carriedByWeekday: Float64Array
}

export function judgedSums(judgement: Judgement): JudgedSums {
  const { latent } = judgement
  const { table } = latent
  const n = table.gaugeCount
  const out: JudgedSums = {
    reports: new Float64Array(n),
    shifted: new Float64Array(n),
    carried: new Float64Array(n),
    alone: new Float64Array(n),
    carriedByWeekday: new Float64Array(n * 7),
  }
  for (let c = 0; c < judgement.count; c++) {
    const g = judgement.gauge[c]!
    const row = judgement.day[c]! - table.firstDay
    const i = row * n + g
    if (table.spanDays[i] !== 1) continue
    out.reports[g]! += 1
    if (table.settled[i] === 1) continue
    out.alone[g]! += Math.max(0, judgement.alone[i]! - latent.stands[i]!)
    for (const { stretch, chance } of judgement.covering.get(i) ?? []) {
      // Each stretch covers several reports; it is counted where it ends.
      if (stretch.to === row) countStretch(out, g, stretch, chance, judgement.day[c]!)
    }
  }
  return out
}

function countStretch(out: JudgedSums, g: number, stretch: Stretch, chance: number, day: number): void {
  if (stretch.kind !== 'carried') {
    out.shifted[g]! += chance
    return
  }
  out.carried[g]! += chance
  // 1970-01-01 was a Thursday.
  out.carriedByWeekday[g * 7 + ((day + 3) % 7)]! += chance
}
