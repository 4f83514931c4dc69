import { expect, it } from 'vitest'
import { figure, percent, table } from './table.ts'

it('table sets words to the left and figures to the right', () => {
  expect(
    table(
      ['check', 'area'],
      [
        ['ratio', '0.4'],
        ['gamma by mean', '10.25'],
      ],
    ),
  ).toBe(['check           area', '-------------  -----', 'ratio            0.4', 'gamma by mean  10.25'].join('\n'))
})

it('an unknown figure is a dash, never NaN', () => {
  expect(figure(Number.NaN)).toBe('-')
  expect(percent(0.1234)).toBe('12.3 %')
})
