/** Lengths of yards as people of the network write them: metres, or feet where rain is read in inches. */
export type LengthUnit = 'm' | 'ft'

export function lengthUnitOf(unit: 'mm' | 'in'): LengthUnit {
  return unit === 'in' ? 'ft' : 'm'
}

export const metresPer: Record<LengthUnit, number> = { m: 1, ft: 0.3048 }

export function lengthText(metres: number, unit: LengthUnit, language: 'en' | 'es', places = 1): string {
  return `${lengthNumber(metres, unit, language, places)} ${unit === 'ft' && language === 'es' ? 'pies' : unit}`
}

export function lengthNumber(metres: number, unit: LengthUnit, language: 'en' | 'es', places = 1): string {
  return new Intl.NumberFormat(language, {
    minimumFractionDigits: 0,
    maximumFractionDigits: places,
    useGrouping: false,
  }).format(metres / metresPer[unit])
}
