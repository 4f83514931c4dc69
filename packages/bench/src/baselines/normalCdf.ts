/**
 * Standard normal distribution function to double precision. Source: [West2005], after Hart (1968), algorithm 5666.
 * Kept apart from the product's own, so that the comparison does not lean on what it compares.
 */
export function normalCdf(z: number): number {
  const size = Math.abs(z)
  if (size > 37) return z > 0 ? 1 : 0
  const bell = Math.exp((-size * size) / 2)
  let upper: number
  if (size < 7.07106781186547) {
    const above =
      ((((((3.52624965998911e-2 * size + 0.700383064443688) * size + 6.37396220353165) * size + 33.912866078383) *
        size +
        112.079291497871) *
        size +
        221.213596169931) *
        size +
        220.206867912376) *
      bell
    const below =
      ((((((8.83883476483184e-2 * size + 1.75566716318264) * size + 16.064177579207) * size + 86.7807322029461) * size +
        296.564248779674) *
        size +
        637.333633378831) *
        size +
        793.826512519948) *
        size +
      440.413735824752
    upper = above / below
  } else {
    upper = bell / (size + 1 / (size + 2 / (size + 3 / (size + 4 / (size + 0.65))))) / 2.506628274631
  }
  return z > 0 ? 1 - upper : upper
}

export function normalDensity(z: number): number {
  return Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI)
}
