/**
 * How unlike two gauges become with distance: the shapes that may be asked for, and their semivariance at a lag in
 * space. Lag in m, semivariance in mm²; 0 at lag 0, the nugget is the jump just above it. Fitting is in fitVariogram.ts
 * and fitVariogramByLikelihood.ts.
 */
import { exponentialShare, gaussianShare, maternThreeHalvesShare, sphericalShare } from './shapes.ts'

export type VariogramKind = 'spherical' | 'exponential' | 'gaussian' | 'matern32'

/** Distances count more across than along the major direction. */
export interface Anisotropy {
  /** Direction of the longest range, degrees clockwise from north. */
  majorBearingDeg: number
  /** Shortest range over longest, above 0 and at most 1. */
  ratio: number
}

export interface Variogram {
  /** `exponential` is Matérn with ν = 1/2, `matern32` with ν = 3/2. */
  kind: VariogramKind
  nuggetMm2: number
  /** Above the nugget; the total is the sum of both. */
  partialSillMm2: number
  /** Where the partial sill is reached (spherical) or 95 % of it (the others), along the major direction. */
  practicalRangeM: number
  anisotropy?: Anisotropy
}

/** Semivariance (mm²) between places apart by (dxM, dyM); 0 only where they coincide. */
export function semivarianceMm2(variogram: Variogram, dxM: number, dyM: number): number {
  if (dxM === 0 && dyM === 0) return 0
  return variogram.nuggetMm2 + variogram.partialSillMm2 * shareOfSill(variogram, dxM, dyM)
}

/** Share of the partial sill reached at a lag, 0 to 1. */
export function shareOfSill(variogram: Variogram, dxM: number, dyM: number): number {
  const h = effectiveLagM(variogram.anisotropy, dxM, dyM) / variogram.practicalRangeM
  switch (variogram.kind) {
    case 'spherical':
      return sphericalShare(h)
    case 'exponential':
      return exponentialShare(h)
    case 'gaussian':
      return gaussianShare(h)
    case 'matern32':
      return maternThreeHalvesShare(h)
  }
}

/** Lag with distances across the major direction stretched by 1 / ratio. */
export function effectiveLagM(anisotropy: Anisotropy | undefined, dxM: number, dyM: number): number {
  if (!anisotropy) return Math.sqrt(dxM * dxM + dyM * dyM)
  const bearing = (anisotropy.majorBearingDeg * Math.PI) / 180
  const along = dxM * Math.sin(bearing) + dyM * Math.cos(bearing)
  const across = (dxM * Math.cos(bearing) - dyM * Math.sin(bearing)) / anisotropy.ratio
  return Math.sqrt(along * along + across * across)
}
