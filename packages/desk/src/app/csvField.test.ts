import { expect, it } from 'vitest'
import { csvField } from './csvField.ts'
import { exactAmount } from './exportAccepted.ts'

it('csvField quotes what needs it and doubles quotes inside', () => {
  expect(csvField('0.25')).toBe('0.25')
  expect(csvField('1.25"')).toBe('"1.25"""')
  expect(csvField('Mill, upper')).toBe('"Mill, upper"')
})

it('csvField keeps what a spreadsheet would run as text, and leaves a minus before a digit alone', () => {
  expect(csvField('=1+1')).toBe("'=1+1")
  expect(csvField('-1.5')).toBe('-1.5')
})

it('exactAmount writes every digit that the ledger holds', () => {
  expect(exactAmount(12_446, 'mm')).toBe('12.446')
  expect(exactAmount(12_446, 'in')).toBe('0.49')
  expect(exactAmount(12_400, 'mm')).toBe('12.4')
  expect(Math.round(Number(exactAmount(12_400, 'in')) * 25_400)).toBe(12_400)
})
