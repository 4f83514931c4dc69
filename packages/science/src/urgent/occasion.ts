/**
 * How usual a kind of weather is at a time of year and of day, relative to its own mean: a wave over the months and one
 * over the hours of local sun time, as exp(a cos). For temperate latitudes; on the southern half of the earth half a year
 * later, and flat toward the equator. Hail and torrents come most in early summer and in the late afternoon, snow in
 * midwinter at any hour (common practice). Broad on purpose: neighbours say far more.
 */
import type { ObservedKind } from './observation.ts'

interface Waves {
  /** Month (1 to 12, fractions too) and strength of the yearly wave; sun hour and strength of the daily one. */
  peakMonth: number
  yearly: number
  peakHour: number
  daily: number
}

const wavesOf: Record<ObservedKind, Waves> = {
  hail: { peakMonth: 6, yearly: 1.5, peakHour: 17, daily: 1 },
  rain: { peakMonth: 7, yearly: 0.7, peakHour: 17, daily: 0.6 },
  flooding: { peakMonth: 7, yearly: 0.4, peakHour: 19, daily: 0.4 },
  wind: { peakMonth: 6.5, yearly: 0.3, peakHour: 17, daily: 0.5 },
  snow: { peakMonth: 1.2, yearly: 3, peakHour: 12, daily: 0 },
}

const msPerYear = 31_556_952_000
/** 2000-01-01T00:00Z: the start of a year of twelve even months. */
const yearStartMs = 946_684_800_000

/** @returns a factor about 1: above it the kind is usual then, below it unusual */
export function occasionFactor(kind: ObservedKind, seenAtMs: number, latDeg: number, lonDeg: number): number {
  const { peakMonth, yearly, peakHour, daily } = wavesOf[kind]
  const yearShare = (seenAtMs - yearStartMs) / msPerYear
  const month = 1 + 12 * (yearShare - Math.floor(yearShare))
  const sunHours = seenAtMs / 3_600_000 + lonDeg / 15
  const tropics = Math.max(-1, Math.min(1, latDeg / 30))
  const ofYear = yearly * tropics * Math.cos((2 * Math.PI * (month - peakMonth - 0.5)) / 12)
  const ofDay = daily * Math.cos((2 * Math.PI * (sunHours - peakHour)) / 24)
  return Math.exp(ofYear + ofDay)
}
