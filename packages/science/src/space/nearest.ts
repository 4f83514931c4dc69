/**
 * The nearest of a set of places to any point of the plane, out of a k-d tree (kdbush): O(k log n) a look-up, without
 * allocation. Ties go to the lower index.
 */
import KDBush from 'kdbush'

export class NearestIndex {
  readonly count: number
  private readonly tree: KDBush | undefined
  /** Largest-first heap of the best so far: squared distances beside indices. */
  private squared = new Float64Array(64)
  private index = new Int32Array(64)
  private held = 0

  /** @param xM, yM  n places; no NaN */
  constructor(xM: ArrayLike<number>, yM: ArrayLike<number>) {
    this.count = xM.length
    if (this.count === 0) return
    this.tree = new KDBush(this.count, 8)
    for (let i = 0; i < this.count; i++) this.tree.add(xM[i]!, yM[i]!)
    this.tree.finish()
  }

  /**
   * The most of `count` places that lie nearest to a point, nearest first.
   * @param out  filled with their indices; at least `count` long
   * @returns how many there are: count, or all places when there are fewer
   */
  nearestInto(xM: number, yM: number, count: number, out: Int32Array): number {
    if (!this.tree || count < 1) return 0
    const wanted = Math.min(count, this.count)
    if (wanted > this.squared.length) {
      this.squared = new Float64Array(wanted)
      this.index = new Int32Array(wanted)
    }
    this.held = 0
    this.search(this.tree, xM, yM, wanted, 0, this.count - 1, 0)
    for (let k = this.held - 1; k >= 0; k--) {
      out[k] = this.index[0]!
      this.removeLargest()
    }
    return wanted
  }

  private search(tree: KDBush, x: number, y: number, wanted: number, left: number, right: number, axis: number): void {
    const { ids, coords, nodeSize } = tree
    if (right - left <= nodeSize) {
      for (let i = left; i <= right; i++) this.offer(ids[i]!, x - coords[2 * i]!, y - coords[2 * i + 1]!, wanted)
      return
    }
    const middle = (left + right) >> 1
    this.offer(ids[middle]!, x - coords[2 * middle]!, y - coords[2 * middle + 1]!, wanted)
    const apart = (axis === 0 ? x : y) - coords[2 * middle + axis]!
    const next = 1 - axis
    if (apart <= 0) this.search(tree, x, y, wanted, left, middle - 1, next)
    else this.search(tree, x, y, wanted, middle + 1, right, next)
    if (this.held < wanted || apart * apart <= this.squared[0]!) {
      if (apart <= 0) this.search(tree, x, y, wanted, middle + 1, right, next)
      else this.search(tree, x, y, wanted, left, middle - 1, next)
    }
  }

  private offer(id: number, dx: number, dy: number, wanted: number): void {
    const squared = dx * dx + dy * dy
    if (this.held < wanted) {
      let k = this.held++
      while (k > 0) {
        const parent = (k - 1) >> 1
        if (!this.isAfter(squared, id, parent)) break
        this.squared[k] = this.squared[parent]!
        this.index[k] = this.index[parent]!
        k = parent
      }
      this.squared[k] = squared
      this.index[k] = id
    } else if (!this.isAfter(squared, id, 0)) {
      this.sink(squared, id)
    }
  }

  private isAfter(squared: number, id: number, k: number): boolean {
    const other = this.squared[k]!
    return squared > other || (squared === other && id > this.index[k]!)
  }

  private removeLargest(): void {
    const last = --this.held
    if (last > 0) this.sink(this.squared[last]!, this.index[last]!)
  }

  /** Put an item in place of the largest. */
  private sink(squared: number, id: number): void {
    let k = 0
    for (;;) {
      let child = 2 * k + 1
      if (child >= this.held) break
      if (child + 1 < this.held && this.isAfter(this.squared[child + 1]!, this.index[child + 1]!, child)) child++
      if (this.isAfter(squared, id, child)) break
      this.squared[k] = this.squared[child]!
      this.index[k] = this.index[child]!
      k = child
    }
    this.squared[k] = squared
    this.index[k] = id
  }
}
