export type Language = 'en' | 'es'
export type LengthUnit = 'mm' | 'in'

/** A number with so many decimals and the decimal mark of the language. */
export function writeNumber(value: number, decimals: number, language: Language): string {
  return new Intl.NumberFormat(language, {
    minimumFractionDigits: decimals,
    maximumFractionDigits: decimals,
    useGrouping: false,
  }).format(value)
}
