import { expect, it } from 'vitest'
import { foreignFigures, textFaults } from './wordFaults.ts'

it('textFaults finds what cannot be read, a sentence of 41 words, and figures that differ', () => {
  expect(textFaults('About 4.5 mm was expected.', 'Se esperaba alrededor de 4,5 mm.')).toEqual([])
  expect(textFaults('About NaN mm.', 'Alrededor de 3 mm.').map((fault) => fault.split(':')[0])).toEqual([
    'unreadable',
    'figures differ',
  ])
  const long = (words: number) => `${'word '.repeat(words - 1)}word.`
  expect(textFaults(long(40), long(40))).toEqual([])
  expect(textFaults(long(41), long(40))).toEqual([`41 words: ${long(41)}`])
})

it('foreignFigures finds the amount of a neighbour among those of the observer', () => {
  const one = {
    ...{ gaugeName: 'Hill 7', typedText: '1.9', explanations: [] },
    finding: { day: 20_515, reportedMm: 1.9 },
    daysAround: [{ day: 20_515, reportedMm: 1.9 }],
  } as unknown as Parameters<typeof foreignFigures>[1]
  expect(foreignFigures('Hill 7, Tuesday 3 March: is it 1.9, or about 19 millimetres?', one)).toEqual([])
  expect(foreignFigures('Your neighbour had 11.4 mm. Is it 1.9?', one)).toEqual([11.4])
})
