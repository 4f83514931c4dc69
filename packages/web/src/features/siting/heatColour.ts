/** Colours for elevation angles: navia from Scientific colour maps 8 [Crameri2023] (MIT), dark where little sky is left. */
const navia: readonly (readonly [number, number, number])[] = [
  [252, 244, 217],
  [233, 236, 190],
  [205, 225, 155],
  [167, 210, 120],
  [127, 189, 104],
  [101, 171, 108],
  [84, 155, 117],
  [71, 143, 125],
  [60, 133, 131],
  [50, 124, 137],
  [40, 114, 143],
  [30, 100, 145],
  [16, 81, 133],
  [8, 59, 106],
  [5, 38, 72],
  [3, 19, 39],
]
export const HEAT_TOP_DEG = 75

export function heatColour(angleDeg: number): readonly [number, number, number] {
  const at = Math.min(1, Math.max(0, angleDeg / HEAT_TOP_DEG)) * (navia.length - 1)
  return navia[Math.round(at)]!
}
