/** The last morning's reports as a stage: which gauges are spoken for, and the few things that can be done to one. */
import type { ExplanationKind } from '@gaugewright/science'
import type { Observer, Service } from '../people/observer.ts'
import type { Random } from '../random/random.ts'
import type { MorningStorm } from '../weather/morningWeather.ts'
import type { Sites } from '../weather/sites.ts'
import { neighbourSupport } from './neighbourSupport.ts'
import { clearCell, mistype, NOTHING, type ReportTable, truthKind } from './reportTable.ts'

export interface MorningCase {
  /** `storm-right`, `late-support`, or the mistake made. */
  name: string
  kind: ExplanationKind
  gauge: number
}

/** Hundredths of an inch that one gauge caught on the last mornings. */
export interface Caught {
  today: number
  yesterday: number
  before: number
}

export interface MorningAsk {
  table: ReportTable
  sites: Sites
  observers: readonly Observer[]
  services: readonly Service[]
  storm: MorningStorm
  random: Random
}

/** Distances between cases, tried one after another. m. */
const APART_M = [10_000, 6_000, 3_000, 0] as const
/** Bystanders are at least this far from the storm. m. */
const STORM_APART_M = 15_000
/** How much the neighbours' support counts against the fit of the amount. */
const SUPPORT_WEIGHT = 1.5
/** Cases have come in by the time the desk opens. */
const PROMPT_MIN = 45

/** The morning's gauges, those already spoken for, and the few things that can be done to one. */
export class MorningStage {
  readonly cases: MorningCase[] = []
  readonly remarks = new Map<number, string>()
  readonly random: Random
  private readonly ask: MorningAsk
  private readonly taken = new Set<number>()
  private readonly order: number[]
  private readonly support: Float64Array

  constructor(ask: MorningAsk) {
    this.ask = ask
    this.random = ask.random
    this.order = ask.random.shuffled(Array.from({ length: ask.table.gaugeCount }, (_, gauge) => gauge))
    const caughtMm = Float64Array.from(this.order, (_, gauge) => {
      const cell = this.cell(gauge, 0)
      return ask.table.typed[cell] === NOTHING ? Number.NaN : ask.table.caughtMm[cell]!
    })
    this.support = neighbourSupport(ask.sites, caughtMm)
  }

  /** @param back 0 for today, -1 for yesterday */
  cell(gauge: number, back: number): number {
    return (this.ask.table.dayCount - 1 + back) * this.ask.table.gaugeCount + gauge
  }

  take(gauge: number, name: string, kind: ExplanationKind): void {
    const cell = this.cell(gauge, 0)
    this.ask.table.delayMin[cell] = Math.min(this.ask.table.delayMin[cell]!, PROMPT_MIN)
    this.taken.add(gauge)
    this.cases.push({ name, kind, gauge })
  }

  /** The free gauge that suits best and has neighbours to tell by, as far from the cases so far as can be; null where none suits. */
  find(suits: (caught: Caught) => number | null): { gauge: number; caught: Caught } | null {
    for (const apartM of APART_M) {
      const gauge = this.best(apartM, (candidate) => {
        const caught = this.caught(candidate)
        const suitsBy = caught === null ? null : suits(caught)
        return suitsBy === null ? null : suitsBy + SUPPORT_WEIGHT * this.support[candidate]!
      })
      const caught = gauge === -1 ? null : this.caught(gauge)
      if (caught !== null) return { gauge, caught }
    }
    return null
  }

  mistypeToday(gauge: number, typed: number, kind: ExplanationKind, decimals?: number): void {
    const cell = this.cell(gauge, 0)
    mistype(this.ask.table, cell, typed, kind)
    if (decimals !== undefined) this.ask.table.decimals[cell] = decimals
  }

  /** The days (counted back from today) that the amount typed on day `back` really stems from. */
  ownDays(gauge: number, back: number, first: number, last: number): void {
    const today = this.ask.table.dayCount - 1
    this.ask.table.ownFirst[this.cell(gauge, back)] = today + first
    this.ask.table.ownLast[this.cell(gauge, back)] = today + last
  }

  zeroDay(gauge: number, back: number): void {
    const cell = this.cell(gauge, back)
    const isWet = this.ask.table.honest[cell]! > 0
    mistype(this.ask.table, cell, 0, isWet ? 'false-zero' : 'stands')
  }

  dropDay(gauge: number, back: number): void {
    clearCell(this.ask.table, this.cell(gauge, back))
  }

  slipYesterday(gauge: number, before: number): void {
    const cell = this.cell(gauge, -1)
    if (this.ask.table.typed[cell] === before) return
    mistype(this.ask.table, cell, before, 'day')
    this.ownDays(gauge, -1, -2, -2)
  }

  leaveOwing(): void {
    const gauge = this.bystander()
    if (gauge === -1) return
    const { table, services } = this.ask
    const lastDay = table.firstDay + table.dayCount - 2
    services[gauge]!.absences.push({ firstDay: lastDay - 2, lastDay, isDeclared: true })
    for (let back = -3; back <= 0; back++) this.dropDay(gauge, back)
  }

  sendAway(): void {
    const gauge = this.bystander()
    if (gauge === -1) return
    const { table, services } = this.ask
    const today = table.firstDay + table.dayCount - 1
    const daysGone = 1 + this.random.below(6)
    services[gauge]!.absences.push({ firstDay: today - daysGone, lastDay: today + 3, isDeclared: true })
    for (let back = -daysGone; back <= 0; back++) this.dropDay(gauge, back)
  }

  silence(): void {
    const gauge = this.bystander()
    if (gauge !== -1) this.dropDay(gauge, 0)
  }

  /** Two days not looked at and declared as one total with today. */
  declareTotal(): void {
    const gauge = this.bystander()
    if (gauge === -1) return
    const { table } = this.ask
    const today = this.cell(gauge, 0)
    for (const back of [-1, -2]) {
      const cell = this.cell(gauge, back)
      table.typed[today] = table.typed[today]! + table.honest[cell]!
      table.caughtMm[today] = table.caughtMm[today]! + table.caughtMm[cell]!
      clearCell(table, cell)
    }
    table.honest[today] = table.typed[today]!
    table.isTrace[today] = 0
    table.spanDays[today] = 3
    table.delayMin[today] = Math.min(table.delayMin[today]!, PROMPT_MIN)
    this.ownDays(gauge, 0, -2, 0)
  }

  makeLate(): void {
    const gauge = this.bystander()
    if (gauge !== -1) this.readLate(gauge)
  }

  readLate(gauge: number): void {
    const cell = this.cell(gauge, 0)
    this.ask.table.endMin[cell] = 548 + this.random.below(70)
    this.ask.table.delayMin[cell] = 4 + this.random.below(25)
  }

  /** A gauge with nothing to decide, away from the storm. */
  private bystander(): number {
    const { sites, storm } = this.ask
    const gauge = this.best(0, (candidate) => {
      const awayM = Math.hypot(
        sites.xM[candidate]! - sites.xM[storm.coreSite]!,
        sites.yM[candidate]! - sites.yM[storm.coreSite]!,
      )
      return this.caught(candidate) === null || awayM < STORM_APART_M ? null : this.random.next()
    })
    if (gauge !== -1) this.taken.add(gauge)
    return gauge
  }

  private best(apartM: number, suits: (gauge: number) => number | null): number {
    const { sites } = this.ask
    let best = -1
    let bestBy = Number.NEGATIVE_INFINITY
    for (const gauge of this.order) {
      if (this.taken.has(gauge)) continue
      const suitsBy = suits(gauge)
      if (suitsBy === null || suitsBy <= bestBy) continue
      const isNearCase = this.cases.some(
        (other) =>
          Math.hypot(sites.xM[other.gauge]! - sites.xM[gauge]!, sites.yM[other.gauge]! - sites.yM[gauge]!) < apartM,
      )
      if (isNearCase) continue
      best = gauge
      bestBy = suitsBy
    }
    return best
  }

  /** The last three days at a gauge that reported them all, day by day, in inches and on time; else null. */
  private caught(gauge: number): Caught | null {
    const { table, observers } = this.ask
    if (observers[gauge]!.unit !== 'in') return null
    const amounts = [0, -1, -2].map((back) => {
      const cell = this.cell(gauge, back)
      const isPlain =
        table.typed[cell] !== NOTHING && table.spanDays[cell] === 1 && table.kind[cell] === truthKind('stands')
      return isPlain && table.isTrace[cell] === 0 ? table.typed[cell]! : table.isTrace[cell] === 1 && isPlain ? 0 : -1
    })
    if (amounts.includes(-1)) return null
    return { today: amounts[0]!, yesterday: amounts[1]!, before: amounts[2]! }
  }
}
