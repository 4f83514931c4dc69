/**
 * Amounts, fills and totals against figures of the trade. Sources beside each check; conversions are exact by the
 * definition 1 in = 25.4 mm (1959) and were worked out by hand, halves up.
 */
import { describe, expect, it } from 'vitest'
import {
  arrangeReadings,
  formatAmount,
  hundredthInchUmFromTenthsMm,
  inchTube,
  parseAmount,
  sumAmounts,
  sumFills,
  tenthsMmFromUm,
} from '../../src/index.ts'

function inchesUm(text: string): number {
  const answer = parseAmount(text, { unit: 'in', decimalMark: '.' })
  if (answer.kind !== 'amount') throw new Error(`${text} is no amount`)
  return answer.amountUm
}

describe('inches to millimetres', () => {
  it.each([
    ['0.01', 254, '0.3', 3],
    ['0.02', 508, '0.5', 5],
    ['0.03', 762, '0.8', 8],
    ['0.04', 1_016, '1.0', 10],
    ['0.05', 1_270, '1.3', 13],
    ['0.10', 2_540, '2.5', 25],
    ['0.25', 6_350, '6.4', 64],
    ['0.62', 15_748, '15.7', 157],
    ['1.00', 25_400, '25.4', 254],
    ['3.77', 95_758, '95.8', 958],
    ['11.00', 279_400, '279.4', 2_794],
  ])('%s in is exactly %d µm, %s mm to a tenth, %d in the tenths of GHCN-Daily', (inches, um, mm, tenths) => {
    expect(inchesUm(inches)).toBe(um)
    expect(formatAmount({ amountUm: um, isTrace: false }, 'mm')).toBe(mm)
    expect(tenthsMmFromUm(um)).toBe(tenths)
  })

  it('every 0.01 in from 0.01 to 11.00 survives the trip to tenths of a millimetre and back', () => {
    for (let hundredths = 1; hundredths <= 1_100; hundredths++) {
      const back = hundredthInchUmFromTenthsMm(tenthsMmFromUm(hundredths * 254))
      if (back !== hundredths * 254) expect(`${hundredths} → ${back}`).toBe('the same')
    }
    expect(hundredthInchUmFromTenthsMm(tenthsMmFromUm(1_100 * 254))).toBe(279_400)
  })

  it('a day of at least 1 mm is one of at least 0.04 in; none shows as 0.9 mm (guide on WMO-No. 1203)', () => {
    expect(tenthsMmFromUm(inchesUm('0.03')) >= 10).toBe(false)
    expect(tenthsMmFromUm(inchesUm('0.04')) >= 10).toBe(true)
    expect(hundredthInchUmFromTenthsMm(9)).toBeNull()
  })
})

describe('overflow', () => {
  const fills = ['1.00', '0.97', '0.88', '0.92'].map((text) => ({ amountUm: inchesUm(text), isTrace: false }))

  it('1.00 + 0.97 + 0.88 + 0.92 = 3.77 in = 95.8 mm = GHCN-Daily 958 (common practice)', () => {
    const sum = sumFills(fills)
    if (sum.kind !== 'amount') throw new Error(sum.code)
    expect(formatAmount(sum, 'in', 'en', 'full')).toBe('3.77 in')
    expect(formatAmount(sum, 'mm', 'en', 'full')).toBe('95.8 mm')
    expect(tenthsMmFromUm(sum.amountUm)).toBe(958)
  })

  it('a portion above the 1.00 in of the inner tube is impossible (maker’s data sheet of a 4-inch gauge)', () => {
    const answer = sumFills([...fills, { amountUm: inchesUm('1.01'), isTrace: false }])
    expect(answer).toMatchObject({ kind: 'problem', code: 'FILL_ABOVE_TUBE', fillIndex: 4 })
    expect(inchTube).toEqual({ unit: 'in', tubeUm: inchesUm('1.00'), capacityUm: inchesUm('11.00') })
  })
})

describe('traces (common practice)', () => {
  it('T + T = T and T + 0.01 = 0.01', () => {
    const trace = { amountUm: 0, isTrace: true }
    expect(sumAmounts([trace, trace])).toEqual(trace)
    expect(sumAmounts([trace, { amountUm: 254, isTrace: false }])).toEqual({ amountUm: 254, isTrace: false })
  })
})

describe('a total over several days (elements MDPR and DAPR of the GHCN-Daily readme)', () => {
  it('0.62 in on Monday after a reading on Friday: 157 tenths over 3 days, and no amount for any of the three', () => {
    const total = {
      id: 'mon',
      firstDay: '2026-05-09',
      lastDay: '2026-05-11',
      amountUm: inchesUm('0.62'),
      isTrace: false,
    }
    const friday = { id: 'fri', firstDay: '2026-05-08', lastDay: '2026-05-08', amountUm: 0, isTrace: false }
    const { days, notes } = arrangeReadings([total, friday], { fromDay: '2026-05-08', toDay: '2026-05-11' })
    expect(tenthsMmFromUm(total.amountUm)).toBe(157)
    expect(notes).toEqual([
      { code: 'TOTAL_OVER_DAYS', readingId: 'mon', dayCount: 3, firstDay: '2026-05-09', lastDay: '2026-05-11' },
    ])
    expect(days.map(({ state }) => state)).toEqual(['read', 'in total', 'in total', 'in total'])
  })
})
