import { logNormalCdf, normalHazardBelow } from './normalCdf.ts'

/**
 * The score of the standard normal below which a given share lies: the inverse of normalCdf, to about 1e-16 relative.
 * Source: algorithm AS 241 (PPND16) of [Wichura1988].
 * @param share  0 to 1; 0 gives -Infinity, 1 gives Infinity, anything outside NaN
 */
export function normalQuantile(share: number): number {
  const q = share - 0.5
  if (q <= 0.425 && q >= -0.425) {
    const r = 0.180625 - q * q
    let up = r * 2509.0809287301227 + 33430.57558358813
    up = up * r + 67265.7709270087
    up = up * r + 45921.95393154987
    up = up * r + 13731.69376550946
    up = up * r + 1971.5909503065513
    up = up * r + 133.14166789178438
    up = up * r + 3.3871328727963665
    let down = r * 5226.495278852546 + 28729.085735721943
    down = down * r + 39307.89580009271
    down = down * r + 21213.794301586597
    down = down * r + 5394.196021424751
    down = down * r + 687.1870074920579
    down = down * r + 42.31333070160091
    down = down * r + 1
    return (q * up) / down
  }
  const tail = q < 0 ? share : 1 - share
  if (!(tail > 0)) return tail === 0 ? (q < 0 ? Number.NEGATIVE_INFINITY : Number.POSITIVE_INFINITY) : Number.NaN
  const size = normalQuantileOfLog(Math.log(tail))
  return q < 0 ? size : -size
}

/**
 * The score whose lower tail has the given natural logarithm, for shares too small to write as a number.
 * @param logShare  at or below ln 0.075; nearer 0 use normalQuantile. Beyond the table of the source
 *   (exp(-700)) one Newton step on logNormalCdf mends the tail
 */
export function normalQuantileOfLog(logShare: number): number {
  const z = quantileOfLog(logShare)
  return logShare < -700 ? z - (logNormalCdf(z) - logShare) / normalHazardBelow(z) : z
}

function quantileOfLog(logShare: number): number {
  let r = Math.sqrt(-logShare)
  if (r <= 5) {
    r -= 1.6
    let up = r * 0.0007745450142783414 + 0.022723844989269184
    up = up * r + 0.2417807251774506
    up = up * r + 1.2704582524523684
    up = up * r + 3.6478483247632045
    up = up * r + 5.769497221460691
    up = up * r + 4.630337846156546
    up = up * r + 1.4234371107496835
    let down = r * 1.0507500716444169e-9 + 0.0005475938084995345
    down = down * r + 0.015198666563616457
    down = down * r + 0.14810397642748008
    down = down * r + 0.6897673349851
    down = down * r + 1.6763848301838038
    down = down * r + 2.053191626637759
    down = down * r + 1
    return -up / down
  }
  r -= 5
  let up = r * 2.0103343992922881e-7 + 2.7115555687434876e-5
  up = up * r + 0.0012426609473880784
  up = up * r + 0.026532189526576124
  up = up * r + 0.29656057182850487
  up = up * r + 1.7848265399172913
  up = up * r + 5.463784911164114
  up = up * r + 6.657904643501103
  let down = r * 2.0442631033899397e-15 + 1.421511758316446e-7
  down = down * r + 1.8463183175100548e-5
  down = down * r + 0.0007868691311456133
  down = down * r + 0.014875361290850615
  down = down * r + 0.1369298809227358
  down = down * r + 0.599832206555888
  down = down * r + 1
  return -up / down
}
