import { expect, it } from 'vitest'
import { plainAmountUm } from './plainAmount.ts'

it.each([
  ['0', 'mm', 0],
  ['12', 'mm', 12_000],
  ['0.3', 'mm', 300],
  ['.4', 'mm', 400],
  ['28.45', 'mm', 28_450],
  ['0.0005', 'mm', 1],
  ['0.01', 'in', 254],
  ['1.13', 'in', 28_702],
  ['3.77', 'in', 95_758],
  ['9999.9', 'mm', 9_999_900],
] as const)('reads %s %s exactly, in micrometres', (text, unit, amountUm) => {
  expect(plainAmountUm(text, unit)).toBe(amountUm)
})

it.each(['', '.', '1.', '04', '00.4', '1,2', '-1', '+1', '1e2', '1.2.3', 'T', ' 1', '1 ', '٣', '12345', '0.1234567'])(
  'leaves %j to parseAmount',
  (text) => {
    expect(plainAmountUm(text, 'mm')).toBe(-1)
  },
)
