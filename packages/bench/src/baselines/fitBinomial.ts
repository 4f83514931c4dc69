/** Logistic regression of shares on a few terms, by Newton steps with a slight ridge so that separable cases settle. */

const ridge = 0.02

/**
 * @param terms         m rows of p terms, row by row; the first term of each row is the constant 1 and is not shrunk
 * @param shares        m values from 0 to 1
 * @param coefficients  p numbers, overwritten with the fit and returned
 */
export function fitBinomial(terms: Float64Array, shares: Float64Array, coefficients: Float64Array): Float64Array {
  const p = coefficients.length
  const m = shares.length
  const information = new Float64Array(p * p)
  const gradient = new Float64Array(p)
  coefficients.fill(0)
  for (let step = 0; step < 12; step++) {
    information.fill(0)
    gradient.fill(0)
    for (let i = 0; i < m; i++) {
      let predictor = 0
      for (let j = 0; j < p; j++) predictor += coefficients[j]! * terms[i * p + j]!
      const share = 1 / (1 + Math.exp(-predictor))
      const weight = Math.max(1e-6, share * (1 - share))
      for (let j = 0; j < p; j++) {
        const termJ = terms[i * p + j]!
        gradient[j] = gradient[j]! + (shares[i]! - share) * termJ
        for (let k = 0; k <= j; k++)
          information[j * p + k] = information[j * p + k]! + weight * termJ * terms[i * p + k]!
      }
    }
    for (let j = 0; j < p; j++) {
      const shrink = j === 0 ? 1e-4 : ridge
      information[j * p + j] = information[j * p + j]! + shrink
      gradient[j] = gradient[j]! - shrink * coefficients[j]!
    }
    solvePositiveInPlace(information, gradient)
    let largest = 0
    for (let j = 0; j < p; j++) largest = Math.max(largest, Math.abs(gradient[j]!))
    const damp = largest > 4 ? 4 / largest : 1
    for (let j = 0; j < p; j++) coefficients[j] = coefficients[j]! + damp * gradient[j]!
    if (largest < 1e-4) break
  }
  return coefficients
}

/** Solves A x = b for a symmetric positive A given by its lower triangle; A becomes its Cholesky factor, b becomes x. */
function solvePositiveInPlace(a: Float64Array, b: Float64Array): void {
  const p = b.length
  for (let j = 0; j < p; j++) {
    for (let i = j; i < p; i++) {
      let sum = a[i * p + j]!
      for (let k = 0; k < j; k++) sum -= a[i * p + k]! * a[j * p + k]!
      a[i * p + j] = i === j ? Math.sqrt(sum) : sum / a[j * p + j]!
    }
    let sum = b[j]!
    for (let k = 0; k < j; k++) sum -= a[j * p + k]! * b[k]!
    b[j] = sum / a[j * p + j]!
  }
  for (let j = p - 1; j >= 0; j--) {
    let sum = b[j]!
    for (let k = j + 1; k < p; k++) sum -= a[k * p + j]! * b[k]!
    b[j] = sum / a[j * p + j]!
  }
}
