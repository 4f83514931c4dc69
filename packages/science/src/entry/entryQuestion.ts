/**
 * Whether to ask an observer back at the moment of typing, and about what. Coarse on purpose: no odds and no expected
 * amount leave here, and every alternative follows from the typed amount alone, so that an answer tells next to nothing
 * of what the neighbours had. The law of the expected amount comes from the neighbours (judgeEntry.ts) or from the
 * gauge's own climate (checkAlone.ts).
 */
import type { ExplanationDetail } from '../mistakes/finding.ts'
import type { ExplanationKind, Mistake } from '../mistakes/mistake.ts'
import { roundUm } from '../units/roundUm.ts'

/** `amountUm`: what it would have been, on the gauge's own steps; null where only a second look at the gauge helps. */
export interface EntryAlternative {
  kind: Mistake
  amountUm: number | null
}

export interface EntryQuestion {
  /** One or two, the likelier first. */
  alternatives: readonly EntryAlternative[]
}

export interface EntryTyped {
  amountUm: number
  /** The gauge's step, µm. */
  stepUm: number
  tubeUm: number
}

/** One way in which the entry may have come about; `odds` need only be right against one another. */
export interface EntryOdds {
  kind: ExplanationKind
  odds: number
  detail: ExplanationDetail | null
}

/** Asked only where the amount is likelier a mistake than right: a question at every second breakfast would not be read. */
const askBelow = 0.5
/** A second alternative is offered where it is at least this share as likely as the first. */
const offeredFrom = 0.2
const mostOffered = 2

/** @returns null where the amount may well be right */
export function entryQuestion(typed: EntryTyped, explanations: readonly EntryOdds[]): EntryQuestion | null {
  let stands = 0
  let total = 0
  const mistaken: { alternative: EntryAlternative; odds: number }[] = []
  for (const { kind, odds, detail } of explanations) {
    total += odds
    if (kind === 'stands') {
      stands += odds
      continue
    }
    const alternative = alternativeOf(typed, kind, detail)
    const same = mistaken.find(
      (one) => one.alternative.kind === kind && one.alternative.amountUm === alternative.amountUm,
    )
    if (same === undefined) mistaken.push({ alternative, odds })
    else same.odds += odds
  }
  if (!(stands < askBelow * total)) return null
  mistaken.sort((a, b) => b.odds - a.odds)
  const first = mistaken[0]
  if (first === undefined) return null
  const offered = mistaken.filter((one) => one.odds >= offeredFrom * first.odds)
  return {
    alternatives: distinct(
      typed,
      offered.map(({ alternative }) => alternative),
    ).slice(0, mostOffered),
  }
}

function alternativeOf(typed: EntryTyped, kind: Mistake, detail: ExplanationDetail | null): EntryAlternative {
  const { amountUm, stepUm, tubeUm } = typed
  const onSteps = (um: number): number => roundUm(Math.max(0, Math.round(um)), stepUm)
  switch (kind) {
    case 'decimal':
      return { kind, amountUm: detail?.kind === 'decimal' ? onSteps(amountUm / 10 ** detail.places) : null }
    case 'unit':
      if (detail?.kind !== 'unit') return { kind, amountUm: null }
      return { kind, amountUm: onSteps(detail.measuredIn === 'in' ? amountUm * 25.4 : amountUm / 25.4) }
    case 'transposed':
      return { kind, amountUm: detail?.kind === 'transposed' ? onSteps(Number(detail.originalText) * 1000) : null }
    case 'first-fill-lost':
      return { kind, amountUm: amountUm + tubeUm }
    default:
      return { kind, amountUm: null }
  }
}

/** An alternative that is the typed amount itself, or one offered already, is no alternative. */
function distinct(typed: EntryTyped, all: readonly EntryAlternative[]): EntryAlternative[] {
  const out: EntryAlternative[] = []
  for (const one of all) {
    const isTyped = one.amountUm === typed.amountUm
    const isOffered = one.amountUm !== null && out.some(({ amountUm }) => amountUm === one.amountUm)
    if (!isOffered) out.push(isTyped ? { kind: one.kind, amountUm: null } : one)
  }
  return out
}
