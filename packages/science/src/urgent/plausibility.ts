/**
 * How likely a report is so as told, by Bayes over three cases: as told; it happened, but smaller than told; nothing of the
 * kind. Prior: how sizes were taken (ruler, object, measured or estimated), sharpened by how usual the kind is at that
 * time of year and day (occasion.ts). Evidence, each piece taken as independent given the case:
 *
 * - another report of weather that comes with it, d km and t minutes apart, counts by k = exp(-(d/12)²/2 - (t/25)²/2): where
 *   there is a storm, reports are g times as dense about it as elsewhere, so it multiplies the odds of either case with a
 *   storm by 1 + g k, g = 30 for the same kind and 8 for another;
 * - of the same kind with a size: the logarithm of its size is normal about the true one, of spread 0.45 (sizes in one storm
 *   differ, and reporters err), with weight k; else broad about the usual. "Smaller" means two thirds of what was told,
 *   with spread 0.3;
 * - each gauge within 8 km that could have told and did not would have done so with a chance of 0.04 at the place itself.
 *
 * The numbers are common practice, set broad; silence of volunteers is weak evidence and is treated so. A person who
 * reports twice is one witness. Bayes' rule as in [Gelman2013].
 */
import type { ObservedKind } from './observation.ts'
import { occasionFactor } from './occasion.ts'

export interface WitnessedReport {
  kind: ObservedKind
  latDeg: number
  lonDeg: number
  seenAtMs: number
  /** Comparable within a kind (magnitudeOf); null where none was told. */
  magnitude: number | null
  /** How the size was taken, where it was. */
  by: 'ruler' | 'object' | 'phone ruler' | 'measured' | 'estimated' | null
  /** Whoever tells: two reports of one witness do not support each other. */
  witness: string
}

export interface OtherReport extends WitnessedReport {
  distanceKm: number
}

export interface Plausibility {
  /** Odds (0 to 1) of: as told; smaller than told; nothing of the kind. They sum to 1. */
  asTold: number
  smaller: number
  nothing: number
  /** Of "as told" before anybody else was heard. */
  priorAsTold: number
  /** Other witnesses that bear on it at all, and those of them that speak for it. */
  near: number
  inFavour: number
  nearestKm: number | null
}

const reachKm = 12
const reachMinutes = 25
const densitySame = 30
const densityOther = 8
const sizeSpread = 0.45
const smallerLog = Math.log(2 / 3)
const smallerSpread = 0.3
/** Broad distribution of sizes anywhere, about the told one: what a report of another storm would say. */
const broadSpread = 1
const silentReachKm = 8
const silentChance = 0.04
/** Below this a report is not about the same weather. */
const leastKernel = 0.02

/** Weather that comes together out of one storm. */
const companions: Record<ObservedKind, readonly ObservedKind[]> = {
  hail: ['hail', 'rain', 'wind', 'flooding'],
  rain: ['rain', 'flooding', 'hail', 'wind'],
  flooding: ['flooding', 'rain', 'hail'],
  wind: ['wind', 'hail', 'rain'],
  snow: ['snow', 'wind'],
}

/**
 * @param others          reports near in time, the report itself left out
 * @param silentKm        distances of gauges whose observers could have told and did not, km
 */
export function plausibilityOf(
  report: WitnessedReport,
  others: readonly OtherReport[],
  silentKm: readonly number[],
): Plausibility {
  const prior = priorOf(report)
  let asTold = Math.log(prior.asTold)
  let smaller = Math.log(prior.smaller)
  let nothing = Math.log(prior.nothing)
  let near = 0
  let inFavour = 0
  let nearestKm: number | null = null
  for (const other of nearestOfEachWitness(report, others)) {
    const kernel = kernelOf(report, other)
    if (kernel < leastKernel) continue
    near++
    nearestKm = Math.min(nearestKm ?? other.distanceKm, other.distanceKm)
    const isSame = other.kind === report.kind
    const storm = Math.log(1 + (isSame ? densitySame : densityOther) * kernel)
    const [toldSize, smallerSize] = isSame ? sizeLogs(report, other, kernel) : [0, 0]
    asTold += storm + toldSize
    smaller += storm + smallerSize
    // A storm, but with sizes that rather say "smaller", does not speak for it as told.
    if (storm + toldSize > 0 && toldSize >= smallerSize) inFavour++
  }
  for (const km of silentKm) {
    if (km > silentReachKm) continue
    const silence = Math.log(1 - silentChance * Math.exp(-0.5 * (km / (silentReachKm / 2)) ** 2))
    asTold += silence
    smaller += silence
  }
  const most = Math.max(asTold, smaller, nothing)
  ;[asTold, smaller, nothing] = [Math.exp(asTold - most), Math.exp(smaller - most), Math.exp(nothing - most)]
  const sum = asTold + smaller + nothing
  return {
    asTold: asTold / sum,
    smaller: smaller / sum,
    nothing: nothing / sum,
    priorAsTold: prior.asTold,
    near,
    inFavour,
    nearestKm,
  }
}

function priorOf(report: WitnessedReport): { asTold: number; smaller: number; nothing: number } {
  const smaller = report.magnitude === null ? 0.02 : report.by === 'ruler' || report.by === 'measured' ? 0.06 : 0.18
  const falseAlarm = 0.04 / occasionFactor(report.kind, report.seenAtMs, report.latDeg, report.lonDeg)
  const nothing = falseAlarm / (1 + falseAlarm)
  return { asTold: (1 - smaller) * (1 - nothing), smaller: smaller * (1 - nothing), nothing }
}

/** How far another report is about the same weather: 1 at the same place and time, 0 for weather that does not come with it. */
function kernelOf(report: WitnessedReport, other: OtherReport): number {
  if (!companions[report.kind].includes(other.kind)) return 0
  const minutes = (other.seenAtMs - report.seenAtMs) / 60_000
  return Math.exp(-0.5 * (other.distanceKm / reachKm) ** 2 - 0.5 * (minutes / reachMinutes) ** 2)
}

/** Of several reports of one witness the one that bears most; none of the reporter's own. */
function nearestOfEachWitness(report: WitnessedReport, others: readonly OtherReport[]): OtherReport[] {
  const best = new Map<string, OtherReport>()
  for (const other of others) {
    if (other.witness === report.witness) continue
    const before = best.get(other.witness)
    if (before === undefined || kernelOf(report, other) > kernelOf(report, before)) best.set(other.witness, other)
  }
  return [...best.values()]
}

/** What the other's size says for "as told" and "smaller", as logarithms of ratios to what a size anywhere would say. */
function sizeLogs(report: WitnessedReport, other: OtherReport, kernel: number): [number, number] {
  if (report.magnitude === null || other.magnitude === null) return [0, 0]
  const apart = Math.log(other.magnitude / report.magnitude)
  const broad = normal(apart, broadSpread)
  const told = kernel * normal(apart, sizeSpread) + (1 - kernel) * broad
  const less = kernel * normal(apart - smallerLog, Math.hypot(sizeSpread, smallerSpread)) + (1 - kernel) * broad
  return [Math.log(told / broad), Math.log(less / broad)]
}

function normal(x: number, spread: number): number {
  return Math.exp(-0.5 * (x / spread) ** 2) / spread
}
