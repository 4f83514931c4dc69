/**
 * For each report the others that bear on it: near in space and time, the fifty that bear most. More would add nothing to
 * odds that are sure by then, and a storm of thousands is weighed in a blink. Plain numbers on one plane; pure.
 */
import { type OtherReport, projectionFor, toPlane, type WitnessedReport } from '@gaugewright/science'
import type { Gauge } from '../../ports/ledger.ts'
import { type PlacedReportNow, witnessed } from './placedReport.ts'

const reachKm = 40
const reachMinutes = 90
/** How kilometres and minutes weigh against each other, as in the plausibility of the science. */
const scaleKm = 12
const scaleMinutes = 25
const mostOthers = 50
const bins = 64
const silentReachKm = 8

export class NearReports {
  readonly #reports: readonly PlacedReportNow[]
  readonly #witnessed: WitnessedReport[]
  readonly #place: (at: { latDeg: number; lonDeg: number }) => { x: number; y: number }
  readonly #x: Float64Array
  readonly #y: Float64Array
  readonly #minute: Float64Array
  readonly #apart: Float64Array
  readonly #gauges: { id: string; x: number; y: number }[]
  readonly #toldAt = new Map<string, number[]>()

  /** @param gauges  those with an observer count as silent where they told nothing */
  constructor(reports: readonly PlacedReportNow[], gauges: readonly Gauge[]) {
    this.#reports = [...reports].sort((one, other) => one.seenAtMs - other.seenAtMs)
    this.#witnessed = this.#reports.map(witnessed)
    const projection = projectionFor(reports)
    this.#place = ({ latDeg, lonDeg }) => {
      const { xM, yM } = toPlane(projection, latDeg, lonDeg)
      return { x: xM / 1000, y: yM / 1000 }
    }
    const places = this.#reports.map(this.#place)
    this.#x = Float64Array.from(places, ({ x }) => x)
    this.#y = Float64Array.from(places, ({ y }) => y)
    this.#minute = Float64Array.from(this.#reports, ({ seenAtMs }) => seenAtMs / 60_000)
    this.#apart = new Float64Array(this.#reports.length)
    this.#gauges = gauges.flatMap((gauge) =>
      gauge.observerName === null ? [] : [{ id: gauge.id, ...this.#place(gauge) }],
    )
    for (const { gauge, seenAtMs } of this.#reports) {
      if (gauge !== null) this.#toldAt.set(gauge.id, [...(this.#toldAt.get(gauge.id) ?? []), seenAtMs / 60_000])
    }
  }

  /** The others that bear on a report. */
  around(report: PlacedReportNow): OtherReport[] {
    const { x, y } = this.#place(report)
    const minute = report.seenAtMs / 60_000
    const [first, last] = [this.#from(minute - reachMinutes), this.#from(minute + reachMinutes + 1e-9)]
    const counts = new Uint32Array(bins + 1)
    const furthest = (reachKm / scaleKm) ** 2 + (reachMinutes / scaleMinutes) ** 2
    for (let index = first; index < last; index++) {
      const km2 = ((this.#x[index] as number) - x) ** 2 + ((this.#y[index] as number) - y) ** 2
      const apart = km2 / scaleKm ** 2 + (((this.#minute[index] as number) - minute) / scaleMinutes) ** 2
      this.#apart[index] = km2 > reachKm ** 2 ? Number.NaN : apart
      if (km2 <= reachKm ** 2) (counts[Math.floor((bins * apart) / furthest)] as number)++
    }
    let bin = 0
    for (let sum = counts[0] as number; sum < mostOthers && bin < bins; ) sum += counts[++bin] as number
    const limit = ((bin + 1) * furthest) / bins
    const near: { index: number; apart: number }[] = []
    for (let index = first; index < last; index++) {
      const apart = this.#apart[index] as number
      if (apart < limit && this.#reports[index]?.id !== report.id) near.push({ index, apart })
    }
    near.sort((one, other) => one.apart - other.apart)
    return near.slice(0, mostOthers).map(({ index }) => ({
      ...(this.#witnessed[index] as WitnessedReport),
      distanceKm: Math.hypot((this.#x[index] as number) - x, (this.#y[index] as number) - y),
    }))
  }

  /** Distances in km of gauges near whose observers told nothing about the time of the report. */
  silentAround(report: PlacedReportNow): number[] {
    const { x, y } = this.#place(report)
    const minute = report.seenAtMs / 60_000
    return this.#gauges.flatMap((gauge) => {
      const km2 = (gauge.x - x) ** 2 + (gauge.y - y) ** 2
      if (km2 > silentReachKm ** 2 || gauge.id === report.gauge?.id) return []
      const hasTold = this.#toldAt.get(gauge.id)?.some((told) => Math.abs(told - minute) <= reachMinutes) === true
      return hasTold ? [] : [Math.sqrt(km2)]
    })
  }

  /** Place of the first report at or after a minute. */
  #from(minute: number): number {
    let low = 0
    let high = this.#minute.length
    while (low < high) {
      const middle = (low + high) >> 1
      if ((this.#minute[middle] as number) < minute) low = middle + 1
      else high = middle
    }
    return low
  }
}
