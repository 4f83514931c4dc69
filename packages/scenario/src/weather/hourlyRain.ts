/**
 * Rain by the hour at every site, as one array. Time is counted in hours from local midnight at the start of
 * `originDay` (an epoch day); the network's zone has no summer time, so every day has 24 hours.
 */
export class HourlyRain {
  readonly originDay: number
  readonly dayCount: number
  readonly hourCount: number
  readonly siteCount: number
  /** mm in the hour; site × hourCount + hour. */
  readonly mm: Float32Array

  constructor(originDay: number, dayCount: number, siteCount: number) {
    this.originDay = originDay
    this.dayCount = dayCount
    this.hourCount = dayCount * 24
    this.siteCount = siteCount
    this.mm = new Float32Array(siteCount * this.hourCount)
  }

  /** Add rain to the hour in which it falls; hours outside the years made are dropped. */
  add(site: number, hour: number, mm: number): void {
    if (hour < 0 || hour >= this.hourCount) return
    const at = site * this.hourCount + Math.floor(hour)
    this.mm[at] = this.mm[at]! + mm
  }

  /** Rain at a site between two times (hours, fractions allowed), taken as even within each hour. */
  between(site: number, fromHour: number, toHour: number): number {
    const first = Math.max(0, Math.floor(fromHour))
    const last = Math.min(this.hourCount - 1, Math.ceil(toHour) - 1)
    const base = site * this.hourCount
    let sum = 0
    for (let hour = first; hour <= last; hour++) {
      const mm = this.mm[base + hour]!
      if (mm === 0) continue
      const share = Math.min(hour + 1, toHour) - Math.max(hour, fromHour)
      sum += mm * share
    }
    return sum
  }
}
