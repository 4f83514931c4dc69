/**
 * An order of places in which every beginning is spread over the whole: along a curve that keeps neighbours together
 * (Morton), read in bit-reversed steps. It depends on where the places lie, not on how they are numbered.
 */

/** @returns indices 0 … n - 1 in spread order. Time O(n log n). */
export function spreadOrder(xM: ArrayLike<number>, yM: ArrayLike<number>): Int32Array {
  const curve = curveOrder(xM, yM)
  const n = curve.length
  const bits = Math.max(1, Math.ceil(Math.log2(Math.max(2, n))))
  const out = new Int32Array(n)
  let filled = 0
  for (let k = 0; k < 1 << bits; k++) {
    let reversed = 0
    for (let b = 0; b < bits; b++) if (k & (1 << b)) reversed |= 1 << (bits - 1 - b)
    if (reversed < n) out[filled++] = curve[reversed]!
  }
  return out
}

/** Indices along the Morton curve; ties by x, then y, then index. */
export function curveOrder(xM: ArrayLike<number>, yM: ArrayLike<number>): Int32Array {
  const n = xM.length
  let west = Number.POSITIVE_INFINITY
  let south = west
  let widest = 0
  for (let i = 0; i < n; i++) {
    west = Math.min(west, xM[i]!)
    south = Math.min(south, yM[i]!)
  }
  for (let i = 0; i < n; i++) widest = Math.max(widest, xM[i]! - west, yM[i]! - south)
  const key = new Float64Array(n)
  for (let i = 0; i < n; i++) {
    const x = widest > 0 ? Math.floor(((xM[i]! - west) / widest) * 32767.999) : 0
    const y = widest > 0 ? Math.floor(((yM[i]! - south) / widest) * 32767.999) : 0
    key[i] = spreadBits(x) + 2 * spreadBits(y)
  }
  const order = Int32Array.from({ length: n }, (_, i) => i)
  return order.sort((a, b) => key[a]! - key[b]! || xM[a]! - xM[b]! || yM[a]! - yM[b]! || a - b)
}

/** 15 bits with gaps between them. */
function spreadBits(value: number): number {
  let v = value & 0x7fff
  v = (v | (v << 8)) & 0x00ff00ff
  v = (v | (v << 4)) & 0x0f0f0f0f
  v = (v | (v << 2)) & 0x33333333
  v = (v | (v << 1)) & 0x55555555
  return v
}
