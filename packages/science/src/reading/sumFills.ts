/**
 * Overflow: rain beyond the inner tube collects in the outer cylinder and is poured through the tube in portions. The
 * amount is the sum of the fills, each at most what the tube holds. Source: common practice; sizes from the makers'
 * data sheets (4-inch gauge: tube 1.00 in, gauge 11 in; metric graduation: tube 25 mm, gauge 280 mm, common practice).
 */
import { ScienceError } from '../error.ts'
import { formatAmount, type Language } from '../units/formatAmount.ts'
import type { FillProblemCode } from './amountAnswer.ts'
import type { Amount, Unit } from './reading.ts'
import { sumAmounts } from './sumAmounts.ts'

export interface TubeSizes {
  unit: Unit
  /** What the inner tube holds. */
  tubeUm: number
  /** What the whole gauge holds. */
  capacityUm: number
}

export const inchTube: TubeSizes = { unit: 'in', tubeUm: 25_400, capacityUm: 279_400 }
export const metricTube: TubeSizes = { unit: 'mm', tubeUm: 25_000, capacityUm: 280_000 }

export type FillsAnswer =
  | ({ kind: 'amount' } & Amount)
  | { kind: 'problem'; code: FillProblemCode; fillIndex: number | null; seen: string; advice: string }

/**
 * Sum of the fills of one reading, in the order poured.
 * @param fills n amounts, whole micrometres
 * @returns the amount, or the first problem; `fillIndex` counts from 0 and is null when no single fill is at fault
 * @throws {ScienceError} OUT_OF_DOMAIN when a fill is not whole micrometres
 */
export function sumFills(fills: readonly Amount[], tube: TubeSizes = inchTube, language: Language = 'en'): FillsAnswer {
  const refuse = (code: FillProblemCode, fillIndex: number | null, amountUm: number): FillsAnswer => ({
    kind: 'problem',
    code,
    fillIndex,
    seen: shown(amountUm, tube.unit, language),
    advice: fillAdvice(code, fillIndex, tube, language),
  })
  for (const [fillIndex, { amountUm }] of fills.entries()) {
    if (!Number.isSafeInteger(amountUm)) {
      throw new ScienceError('OUT_OF_DOMAIN', `fill ${fillIndex + 1} is ${amountUm}, not whole micrometres`)
    }
    if (amountUm < 0) return refuse('FILL_NEGATIVE', fillIndex, amountUm)
    if (amountUm > tube.tubeUm) return refuse('FILL_ABOVE_TUBE', fillIndex, amountUm)
  }
  const sum = sumAmounts(fills)
  if (sum === null) return refuse('FILLS_NONE', null, 0)
  if (sum.amountUm > tube.capacityUm) return refuse('FILLS_ABOVE_CAPACITY', null, sum.amountUm)
  return { kind: 'amount', ...sum }
}

function fillAdvice(code: FillProblemCode, fillIndex: number | null, tube: TubeSizes, language: Language): string {
  const isEs = language === 'es'
  const fill = `${isEs ? 'Medida' : 'Fill'} ${(fillIndex ?? 0) + 1}: `
  switch (code) {
    case 'FILLS_NONE':
      return isEs ? 'Anote lo que había en el tubo; 0 si estaba vacío.' : 'Enter what the tube held, 0 if it was empty.'
    case 'FILL_NEGATIVE':
      return fill + (isEs ? 'no puede ser negativa.' : 'it cannot be below zero.')
    case 'FILL_ABOVE_TUBE': {
      const holds = shown(tube.tubeUm, tube.unit, language)
      return isEs
        ? `${fill}en el tubo interior caben ${holds}. Anote por separado cada vez que lo llenó.`
        : `${fill}the inner tube holds ${holds}. Enter each time you filled it as a fill of its own.`
    }
    case 'FILLS_ABOVE_CAPACITY': {
      const holds = shown(tube.capacityUm, tube.unit, language)
      return isEs
        ? `En el pluviómetro caben ${holds}. Revise si anotó una medida dos veces.`
        : `The gauge holds ${holds}. Check for a fill entered twice.`
    }
  }
}

function shown(amountUm: number, unit: Unit, language: Language): string {
  const size = formatAmount({ amountUm: Math.abs(amountUm), isTrace: false }, unit, language, 'full')
  return amountUm < 0 ? `-${size}` : size
}
