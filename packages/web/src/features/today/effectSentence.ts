import { fill } from '../../words/fill.ts'
import type { Format } from '../../words/format.ts'
import type { Words } from '../../words/messages.ts'
import { unbroken } from '../../words/unbroken.ts'
import type { Effect, Outcome } from './effect.ts'

/**
 * A few short sentences on what a decision did: the reading, the county mean that moved most, the other finding that moved
 * most, what is left.
 */
export function effectSentence(effect: Effect, words: Words, format: Format): string {
  const { outcome } = effect
  const said = [doneSentence(effect, words, format)]
  if (outcome !== null)
    said.push(
      areaSentence(outcome, words, format),
      findingSentence(outcome, words, format),
      leftSentence(outcome, words),
    )
  return said.filter(Boolean).join(' ')
}

function doneSentence({ done }: Effect, { whatIf }: Words, format: Format): string {
  if (done.kind === 'undone') return fill(whatIf.didUndo, { gauge: done.gauge })
  const { verdict, amended } = done.ask
  switch (verdict) {
    case 'stands':
      return fill(whatIf.didStand, { gauge: done.gauge })
    case 'amended': {
      const amount = amended ? format.amount(amended.amountUm, amended.isTrace) : ''
      return fill(whatIf.didAmend, { gauge: done.gauge, amount })
    }
    case 'asked':
      return fill(whatIf.didAsk, { gauge: done.gauge })
    case 'set aside':
      return fill(whatIf.didSetAside, { gauge: done.gauge })
  }
}

function areaSentence({ area }: Outcome, { whatIf }: Words, format: Format): string {
  if (area === null) return whatIf.mapStays
  return fill(whatIf.area, { area: area.name, before: format.bare(area.beforeMm), after: format.mm(area.afterMm) })
}

function findingSentence({ findings, findingCount }: Outcome, { whatIf }: Words, format: Format): string {
  const [first] = findings
  if (first === undefined) return ''
  const values = {
    gauge: first.name,
    before: unbroken(format.percentTight(first.before)),
    after: unbroken(format.percentTight(first.after)),
    count: findingCount - 1,
  }
  return fill(findingCount > 1 ? whatIf.readingAndMore : whatIf.reading, values)
}

function leftSentence({ left, newlyLeft }: Outcome, { whatIf }: Words): string {
  if (left === 0) return whatIf.leftNone
  return fill(newlyLeft ? whatIf.leftNew : whatIf.left, { count: left, fresh: newlyLeft ?? 0 })
}
