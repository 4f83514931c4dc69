/**
 * Classes of amount and their colours. Class edges are round amounts in the network's unit, the isohyets among them where
 * the field brings them, so that a line of the map is an edge of colour. Below the first edge is dry and has no colour.
 * Light page: more is darker; dark page: more is lighter; so little rain is always close to the paper. Amounts in mm.
 */
import { bilbao, brownToGreen, colourAt, navia, type Rgb, rgbOf } from './palettes.ts'

export type ClassScale = {
  /** Lower edges, rising; class i holds edges[i] ≤ mm < edges[i + 1]. For `change`, edges lie on both sides of 0. */
  edgesMm: readonly number[]
  colours: readonly Rgb[]
  /** Class of an amount, -1 where it has no colour. */
  classOf: (mm: number) => number
}

const roundEdges = {
  in: [0.01, 0.1, 0.25, 0.5, 0.75, 1, 1.5, 2, 3, 4, 6, 8, 12].map((inches) => inches * 25.4),
  mm: [0.1, 2, 5, 10, 15, 20, 30, 40, 60, 80, 120, 200, 300],
} as const
const changeEdges = {
  in: [0.01, 0.05, 0.2, 1].map((inches) => inches * 25.4),
  mm: [0.2, 1, 5, 25],
} as const

/** Round edges up to `maxMm`, at most `most` of them: small ones are thinned first, the first (dry) edge stays. */
export function edgesUpTo(maxMm: number, unit: 'in' | 'mm', most = 10): number[] {
  const [first, ...rest] = roundEdges[unit]
  let kept = rest.filter((edge) => edge <= maxMm * 1.001)
  while (kept.length > most - 1) kept = kept.filter((_, i) => i % 2 === 1 || i === kept.length - 1)
  return [first!, ...kept]
}

function sequential(edgesMm: readonly number[], table: readonly string[], isDark: boolean): ClassScale {
  const last = Math.max(1, edgesMm.length - 1)
  const colours = edgesMm.map((_, i) => colourAt(table, isDark ? 0.12 + 0.85 * (i / last) : 0.93 - 0.85 * (i / last)))
  return { edgesMm, colours, classOf: (mm) => classIn(edgesMm, mm) }
}

/** Index of the last edge at or below mm (within a millionth), -1 below the first. */
export function classIn(edgesMm: readonly number[], mm: number): number {
  let found = -1
  for (let i = 0; i < edgesMm.length && mm >= edgesMm[i]! - 1e-6; i += 1) found = i
  return found
}

/**
 * Classes of amount. With isohyets, each of them up to `bulkMm` is an edge, and round edges below the first even step
 * part the light amounts, which cover most of a map; what lies above is one class, so that colours are not spent on
 * the core of one storm. Without isohyets, round edges.
 * @param bulkMm  amount that all but a small part of the field stays below
 */
export function amountScale(
  bulkMm: number,
  isohyetsMm: readonly number[],
  unit: 'in' | 'mm',
  isDark: boolean,
): ClassScale {
  const count = isohyetsMm.length
  if (count < 3) return sequential(edgesUpTo(bulkMm, unit), navia, isDark)
  const [first, ...rest] = roundEdges[unit]
  const evenStep = isohyetsMm[count - 1]! - isohyetsMm[count - 2]!
  const light = rest.filter((edge) => edge > isohyetsMm[0]! * 1.2 && edge < evenStep * 0.75)
  const lines = isohyetsMm.filter((mm, i) => mm > first! * 1.01 && (i < 3 || mm <= bulkMm))
  const edges = [first!, ...light, ...lines].sort((x, y) => x - y).slice(0, 10)
  return sequential(edges, navia, isDark)
}

export function widthScale(maxMm: number, unit: 'in' | 'mm', isDark: boolean): ClassScale {
  return sequential(edgesUpTo(maxMm, unit), bilbao, isDark)
}

/**
 * Eight classes round 0 for a change; less than the first edge either way has no colour. On a dark page the order of
 * lightness is turned round on both sides, so that a small change stays close to the paper there too.
 */
export function changeScale(unit: 'in' | 'mm', isDark: boolean): ClassScale {
  const positive = changeEdges[unit]
  const edgesMm = [...positive.map((edge) => -edge).reverse(), ...positive]
  const sides = [brownToGreen.slice(0, 4), brownToGreen.slice(5)]
  const colours = sides.flatMap((side) => (isDark ? [...side].reverse() : side).map(rgbOf))
  const classOf = (mm: number) => {
    const size = classIn(positive, Math.abs(mm))
    if (size < 0) return -1
    return mm < 0 ? positive.length - 1 - size : positive.length + size
  }
  return { edgesMm, colours, classOf }
}

/** The words of a class in the legend, from its edge to the next; the outermost classes are open. */
export function edgeText(scale: ClassScale, i: number, isChange: boolean, bare: (mm: number) => string): string {
  const edges = scale.edgesMm
  if (!isChange) return i + 1 < edges.length ? `${bare(edges[i]!)}–${bare(edges[i + 1]!)}` : `≥ ${bare(edges[i]!)}`
  const isLess = i < edges.length / 2
  const near = Math.abs(edges[i]!)
  const far = edges[isLess ? i - 1 : i + 1]
  const sign = isLess ? '−' : '+'
  return far === undefined ? `${sign} ≥ ${bare(near)}` : `${sign} ${bare(near)}–${bare(Math.abs(far))}`
}
