import { describe, expect, it } from 'vitest'
import { seededRandom } from '../stats/seededRandom.ts'
import { plainSystem } from './plainSystem.ts'
import { simdSystem } from './simdSystem.ts'
import { smallSystem } from './smallSystem.ts'
import { mostInSystem, type SmallSystem, systemStride } from './systemRoom.ts'

interface Problem {
  /** Lower triangle, own variances on the diagonal. */
  covariance: number[][]
  withPlace: number[]
  value: number[]
}

/** Neighbours scattered over a square of side 1, correlated by distance, each known with a different error. */
function scattered(count: number, seed: number): Problem {
  const random = seededRandom(seed)
  const at = Array.from({ length: count + 1 }, () => [random(), random()] as const)
  const near = (a: number, b: number) =>
    0.2 + 0.6 * Math.exp(-2 * Math.hypot(at[a]![0] - at[b]![0], at[a]![1] - at[b]![1]))
  return {
    covariance: at.slice(0, count).map((_, a) => [...at.slice(0, a).map((_, b) => near(a, b)), 1 + random()]),
    withPlace: at.slice(0, count).map((_, a) => near(a, count)),
    value: at.slice(0, count).map(() => 4 * random() - 2),
  }
}

function solved(
  { room, solve }: SmallSystem,
  { covariance, withPlace, value }: Problem,
): { estimate: number; explained: number } {
  const count = value.length
  for (let a = 0; a < count; a++) {
    for (let b = a; b < count; b++) room[a * systemStride + b] = covariance[b]![a]!
    room[a * systemStride + count] = withPlace[a]!
    room[a * systemStride + count + 1] = value[a]!
  }
  solve(count)
  let estimate = 0
  let explained = 0
  for (let a = 0; a < count; a++) {
    const right = room[a * systemStride + count]!
    estimate += right * room[a * systemStride + count + 1]!
    explained += right * right
  }
  return { estimate, explained }
}

/** The same by the plain triple loop of any textbook, sums in the order of the rows. */
function byTripleLoop({ covariance, withPlace, value }: Problem): { estimate: number; explained: number } {
  const rows = covariance.map((row, a) => [...row, withPlace[a]!, value[a]!])
  const inverse: number[] = []
  const sides: [number, number][] = []
  let estimate = 0
  let explained = 0
  rows.forEach((row, a) => {
    for (let b = 0; b < a; b++) {
      let rest = row[b]!
      for (let c = 0; c < b; c++) rest -= row[c]! * rows[b]![c]!
      row[b] = rest * inverse[b]!
    }
    let pivot = row[a]!
    let right = row[a + 1]!
    let mean = row[a + 2]!
    for (let c = 0; c < a; c++) {
      pivot -= row[c]! * row[c]!
      right -= row[c]! * sides[c]![0]
      mean -= row[c]! * sides[c]![1]
    }
    inverse.push(1 / Math.sqrt(Math.max(1e-4, pivot)))
    sides.push([right * inverse[a]!, mean * inverse[a]!])
    estimate += sides[a]![0] * sides[a]![1]
    explained += sides[a]![0] ** 2
  })
  return { estimate, explained }
}

const simd = simdSystem()
const kernels: [name: string, kernel: SmallSystem][] = [['plain', plainSystem()]]
if (simd !== null) kernels.push(['with wide numbers', simd])

describe.each(kernels)('the kernel for small systems, %s', (_, kernel) => {
  it('with two neighbours is the conditional normal worked out by hand', () => {
    // Inverse of [[1, 0.5], [0.5, 1]] is [[4, -2], [-2, 4]] / 3: weights 0.6 and 0.1 for covariances 0.65 and 0.4.
    const got = solved(kernel, { covariance: [[1], [0.5, 1]], withPlace: [0.65, 0.4], value: [2, -1] })
    expect(got.estimate).toBeCloseTo(0.6 * 2 - 0.1, 14)
    expect(got.explained).toBeCloseTo(0.6 * 0.65 + 0.1 * 0.4, 14)
  })

  it('gives the plain triple loop to the last bit, for any number of neighbours, whatever stood in the room', () => {
    for (let count = 0; count <= mostInSystem; count++) {
      for (const left of [0, 1e300, Number.NaN]) {
        kernel.room.fill(left)
        const problem = scattered(count, 100 + count)
        expect(solved(kernel, problem)).toEqual(byTripleLoop(problem))
      }
    }
  })

  it('stays finite where two neighbours say exactly the same', () => {
    const twins = { covariance: [[1], [1, 1], [0.3, 0.3, 1]], withPlace: [0.8, 0.8, 0.2], value: [1.5, 1.5, -0.4] }
    const got = solved(kernel, twins)
    expect(Number.isFinite(got.estimate)).toBe(true)
    expect(got.explained).toBeLessThan(1)
  })
})

describe('smallSystem', () => {
  it('is the kernel with wide numbers on every Node that the project runs on', () => {
    expect(simd).not.toBeNull()
    expect(smallSystem().room.buffer.byteLength).toBe(65_536)
  })

  it('does without where the engine has no WebAssembly, or a policy forbids it', () => {
    class Forbidden {
      constructor() {
        throw new Error("refused to compile: 'wasm-unsafe-eval' is not an allowed source")
      }
    }
    const engine = { Module: Forbidden, Instance: Forbidden } as unknown as Parameters<typeof simdSystem>[0]
    expect(simdSystem(engine)).toBeNull()
    expect(simdSystem(null)).toBeNull()
  })
})
