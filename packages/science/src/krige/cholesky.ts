/**
 * Cholesky factors of symmetric positive definite matrices in flat row-major arrays, lower triangle only: the one
 * solver behind kriging and the field. The diagonal of the factor is stored inverted, so that solving only multiplies.
 */

/**
 * Factor in place: on return the lower triangle holds L with 1 / L[i][i] on the diagonal. The upper triangle is neither
 * read nor written.
 * @param a       matrix, row i at i * stride
 * @param least   pivots at or below this count as singular
 * @returns -1, or the row at which the matrix proved not positive definite
 * @remarks Time n³ / 6 multiplications.
 */
export function factorInPlace(a: Float64Array, n: number, stride: number, least = 0): number {
  for (let i = 0; i < n; i++) {
    const rowI = i * stride
    factorRowInPlace(a, i, stride, rowI)
    const pivot = a[rowI + i]! - dot(a, rowI, a, rowI, i)
    if (!(pivot > least)) return i
    a[rowI + i] = 1 / Math.sqrt(pivot)
  }
  return -1
}

/**
 * One row of a factor: turn the covariances of a new row with `count` earlier ones, at `row`, into the row of L; four
 * columns at a time, so that the row is read once for four.
 */
export function factorRowInPlace(a: Float64Array, count: number, stride: number, row: number): void {
  let j = 0
  for (; j + 3 < count; j += 4) {
    const r0 = j * stride
    const r1 = r0 + stride
    const r2 = r1 + stride
    const r3 = r2 + stride
    let s0 = a[row + j]!
    let s1 = a[row + j + 1]!
    let s2 = a[row + j + 2]!
    let s3 = a[row + j + 3]!
    for (let k = 0; k < j; k++) {
      const value = a[row + k]!
      s0 -= value * a[r0 + k]!
      s1 -= value * a[r1 + k]!
      s2 -= value * a[r2 + k]!
      s3 -= value * a[r3 + k]!
    }
    s0 *= a[r0 + j]!
    s1 = (s1 - s0 * a[r1 + j]!) * a[r1 + j + 1]!
    s2 = (s2 - s0 * a[r2 + j]! - s1 * a[r2 + j + 1]!) * a[r2 + j + 2]!
    s3 = (s3 - s0 * a[r3 + j]! - s1 * a[r3 + j + 1]! - s2 * a[r3 + j + 2]!) * a[r3 + j + 3]!
    a[row + j] = s0
    a[row + j + 1] = s1
    a[row + j + 2] = s2
    a[row + j + 3] = s3
  }
  for (; j < count; j++) {
    const rowJ = j * stride
    a[row + j] = (a[row + j]! - dot(a, row, a, rowJ, j)) * a[rowJ + j]!
  }
}

/** Solve L z = b in place, b starting at `at`. */
export function solveLowerInPlace(l: Float64Array, n: number, stride: number, b: Float64Array, at = 0): void {
  let i = 0
  for (; i + 3 < n; i += 4) {
    const r0 = i * stride
    const r1 = r0 + stride
    const r2 = r1 + stride
    const r3 = r2 + stride
    let s0 = b[at + i]!
    let s1 = b[at + i + 1]!
    let s2 = b[at + i + 2]!
    let s3 = b[at + i + 3]!
    for (let k = 0; k < i; k++) {
      const value = b[at + k]!
      s0 -= value * l[r0 + k]!
      s1 -= value * l[r1 + k]!
      s2 -= value * l[r2 + k]!
      s3 -= value * l[r3 + k]!
    }
    s0 *= l[r0 + i]!
    s1 = (s1 - s0 * l[r1 + i]!) * l[r1 + i + 1]!
    s2 = (s2 - s0 * l[r2 + i]! - s1 * l[r2 + i + 1]!) * l[r2 + i + 2]!
    s3 = (s3 - s0 * l[r3 + i]! - s1 * l[r3 + i + 1]! - s2 * l[r3 + i + 2]!) * l[r3 + i + 3]!
    b[at + i] = s0
    b[at + i + 1] = s1
    b[at + i + 2] = s2
    b[at + i + 3] = s3
  }
  for (; i < n; i++) {
    const row = i * stride
    b[at + i] = (b[at + i]! - dot(l, row, b, at, i)) * l[row + i]!
  }
}

/** Solve Lᵀ x = z in place. */
export function solveUpperInPlace(l: Float64Array, n: number, stride: number, z: Float64Array, at = 0): void {
  for (let i = n - 1; i >= 0; i--) {
    const row = i * stride
    const x = z[at + i]! * l[row + i]!
    z[at + i] = x
    for (let j = 0; j < i; j++) z[at + j]! -= l[row + j]! * x
  }
}

/** Sum of products of `count` numbers, four sums at a time. */
export function dot(a: Float64Array, fromA: number, b: Float64Array, fromB: number, count: number): number {
  let s0 = 0
  let s1 = 0
  let s2 = 0
  let s3 = 0
  let k = 0
  for (; k + 3 < count; k += 4) {
    s0 += a[fromA + k]! * b[fromB + k]!
    s1 += a[fromA + k + 1]! * b[fromB + k + 1]!
    s2 += a[fromA + k + 2]! * b[fromB + k + 2]!
    s3 += a[fromA + k + 3]! * b[fromB + k + 3]!
  }
  for (; k < count; k++) s0 += a[fromA + k]! * b[fromB + k]!
  return s0 + s1 + (s2 + s3)
}

/** Inverse of the matrix behind a factor, both triangles filled; n³ / 2 multiplications. */
export function inverseOf(l: Float64Array, n: number, stride: number): Float64Array {
  // Columns of L⁻¹ first (lower triangle, kept by rows of its transpose), then L⁻ᵀ L⁻¹.
  const lowerInverse = new Float64Array(n * n)
  for (let c = 0; c < n; c++) {
    const column = c * n
    lowerInverse[column + c] = l[c * stride + c]!
    for (let i = c + 1; i < n; i++) {
      const row = i * stride
      lowerInverse[column + i] = -dot(l, row + c, lowerInverse, column + c, i - c) * l[row + i]!
    }
  }
  const inverse = new Float64Array(n * n)
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      const value = dot(lowerInverse, i * n + i, lowerInverse, j * n + i, n - i)
      inverse[i * n + j] = value
      inverse[j * n + i] = value
    }
  }
  return inverse
}
