import { fill } from '../../words/fill.ts'
import type { Format } from '../../words/format.ts'
import type { Words } from '../../words/messages.ts'
import type { Effect } from './effect.ts'

/** One or two short sentences on what a decision did: the reading, the county mean that moved most, what is left. */
export function effectSentence(effect: Effect, words: Words, format: Format): string {
  return [doneSentence(effect, words, format), areaSentence(effect, words, format), leftSentence(effect, words)]
    .filter(Boolean)
    .join(' ')
}

function doneSentence({ done }: Effect, words: Words, format: Format): string {
  if (done.kind === 'undone') return fill(words.effectUndone, { gauge: done.gauge })
  const { verdict, amended } = done.ask
  switch (verdict) {
    case 'stands':
      return fill(words.effectStands, { gauge: done.gauge })
    case 'amended': {
      const amount = amended ? format.amount(amended.amountUm, amended.isTrace) : ''
      return fill(words.effectAmended, { gauge: done.gauge, amount })
    }
    case 'asked':
      return fill(words.effectAsked, { gauge: done.gauge })
    case 'set aside':
      return fill(words.effectSetAside, { gauge: done.gauge })
  }
}

function areaSentence({ area }: Effect, words: Words, format: Format): string {
  if (area === undefined) return ''
  if (area === null) return words.effectNone
  return fill(words.effectArea, { area: area.name, before: format.bare(area.beforeMm), after: format.mm(area.afterMm) })
}

function leftSentence({ left }: Effect, words: Words): string {
  return left > 0 ? fill(words.effectLeft, { count: left }) : words.effectLeftNone
}
