/** Stones as the form offers and writes them: by object, and as a length in the network's unit. */
import { type HailObjectName, hailObjectMm, hailObjectNames } from '@gaugewright/science'
import { type Language, type LengthUnit, writeNumber } from './writeNumber.ts'

export interface SizeOption {
  object: HailObjectName
  diameterMm: number
}

/** Small to large. */
export const sizeOptions: readonly SizeOption[] = hailObjectNames.map((object) => ({
  object,
  diameterMm: hailObjectMm(object),
}))

/** `1.75 in`, `44 mm`: hundredths of an inch as warnings count, whole millimetres. */
export function writeStone(diameterMm: number, unit: LengthUnit, language: Language): string {
  return unit === 'in'
    ? `${writeNumber(diameterMm / 25.4, 2, language)} in`
    : `${writeNumber(diameterMm, 0, language)} mm`
}
