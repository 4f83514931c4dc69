/** docs/evidence-in-words.md shows what the desk says, word for word. */
import { readFileSync } from 'node:fs'
import { mistakes } from '@gaugewright/science'
import { describe, expect, it } from 'vitest'
import { findingSentence, wordsFor } from '../src/app/wording/wordFinding.ts'
import { wordExamples } from './support/wordExamples.ts'

const page = readFileSync(new URL('../../../docs/evidence-in-words.md', import.meta.url), 'utf8')
  .replace(/^> ?/gm, '')
  .replace(/\s+/g, ' ')

it('there is one example for every explanation', () => {
  expect(wordExamples.map(({ explanation }) => explanation.kind)).toEqual(['stands', ...mistakes])
})

describe.each(wordExamples.map((one) => [one.explanation.kind, one] as const))('%s', (_, { explanation, askIn }) => {
  it.each(['en', 'es'] as const)('is shown on the page as it is said in %s', (language) => {
    const ask = askIn(language)
    expect(page).toContain(findingSentence([explanation], ask))
    expect(page).toContain(wordsFor(explanation, ask).question)
  })
})
