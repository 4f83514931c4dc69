/**
 * Mistakes in otherwise honest daily reports, as people make them: more on wet days than on dry ones, more by some
 * observers than by others. Chances and weights are reasoned from how each slip happens; they follow no data set.
 * Totals sent as one day's, and zeros for missed days, are made in keepBook.ts.
 */
import type { Mistake } from '@gaugewright/science'
import type { Observer } from '../people/observer.ts'
import type { Random } from '../random/random.ts'
import { MM_PER_INCH } from './readGauge.ts'
import { clearCell, mistype, NOTHING, type ReportTable, truthKind } from './reportTable.ts'

/** Chance of a mistake in a report, by what the gauge held. */
const WET_CHANCE = 0.043
const DRY_CHANCE = 0.0055
const CAPACITY_IN_HUNDREDTHS = 1100
const TUBE_IN_HUNDREDTHS = 100

/** All but `carried`, which follows from missed days. */
type PlainMistake = Exclude<Mistake, 'carried'>

export interface MistakeAsk {
  table: ReportTable
  gauge: number
  observer: Observer
  /** Days from this index on are left as they are. */
  untilDay: number
  random: Random
}

export function makeMistakes(ask: MistakeAsk): void {
  const { table, gauge, observer, random } = ask
  for (let day = 1; day < ask.untilDay - 1; day++) {
    const cell = day * table.gaugeCount + gauge
    if (table.typed[cell] === NOTHING || table.spanDays[cell] !== 1 || table.kind[cell] !== 0) continue
    const isWet = table.honest[cell]! >= (observer.unit === 'mm' ? 40 : 2)
    const chance = (isWet ? WET_CHANCE : DRY_CHANCE) * observer.carelessness
    if (!random.chance(Math.min(0.3, chance))) continue
    const kind = isWet ? wetKind(ask, cell) : dryKind(ask, cell)
    if (kind === 'day') shiftDays(ask, day)
    else apply(ask, cell, kind)
  }
}

function wetKind(ask: MistakeAsk, cell: number): PlainMistake {
  const { table, random, observer } = ask
  const overflowed = observer.unit === 'in' && table.honest[cell]! > TUBE_IN_HUNDREDTHS + 3
  const kinds: [PlainMistake, number][] = [
    ['decimal', 15],
    ['unit', 9],
    ['day', 13],
    ['first-fill-lost', overflowed ? 45 : 0],
    ['first-fill-only', overflowed ? 30 : 0],
    ['false-zero', 20],
    ['transposed', table.honest[cell]! >= 12 ? 11 : 0],
    ['repeated', yesterday(ask, cell) > 0 ? 11 : 0],
    ['other', 12],
  ]
  return kinds[random.weighted(kinds.map(([, weight]) => weight))]![0]
}

function dryKind(ask: MistakeAsk, cell: number): PlainMistake {
  const before = yesterday(ask, cell)
  const kinds: [PlainMistake, number][] = [
    ['wetted', 62],
    ['day', before > 8 ? 40 : 0],
    ['repeated', before > 3 ? 40 : 0],
    ['other', 8],
  ]
  return kinds[ask.random.weighted(kinds.map(([, weight]) => weight))]![0]
}

function yesterday(ask: MistakeAsk, cell: number): number {
  return ask.table.typed[cell - ask.table.gaugeCount] ?? NOTHING
}

function apply(ask: MistakeAsk, cell: number, kind: Exclude<PlainMistake, 'day'>): void {
  const { table, random, observer } = ask
  const honest = table.typed[cell]!
  const inMm = observer.unit === 'mm'
  const step = inMm ? 20 : 1
  let typed = honest
  if (kind === 'decimal') typed = slipPoint(honest, random)
  else if (kind === 'unit') typed = wrongUnit(honest, inMm)
  else if (kind === 'first-fill-lost') typed = honest - TUBE_IN_HUNDREDTHS
  else if (kind === 'first-fill-only') typed = TUBE_IN_HUNDREDTHS
  else if (kind === 'false-zero') typed = 0
  else if (kind === 'wetted') typed = step * wetting(random)
  else if (kind === 'transposed') typed = swapDigits(honest, random)
  else if (kind === 'repeated') typed = Math.max(0, yesterday(ask, cell))
  else typed = step * Math.round((honest > 0 ? honest * farFactor(random) : random.between(4, 70) * step) / step)
  if (typed === honest || typed < 0 || (!inMm && typed > CAPACITY_IN_HUNDREDTHS)) return
  if (typed === 0 && kind !== 'false-zero') return
  mistype(table, cell, typed, kind)
  if (kind === 'unit') table.decimals[cell] = inMm ? 2 : 1
}

/** The point one place off, seldom two. */
function slipPoint(honest: number, random: Random): number {
  const factor = [10, 0.1, 100, 0.01][random.weighted([48, 42, 4, 6])]!
  return Math.round(honest * factor)
}

/** Millimetres to one decimal in the inch field, or inches in the millimetre field. */
export function wrongUnit(honest: number, inMm: boolean): number {
  return inMm ? Math.round(honest / MM_PER_INCH) : Math.round((honest * MM_PER_INCH) / 10) * 10
}

/** Dew or drip: a step or three. Sprinkler, splash, snow from a roof: more. In steps of the gauge. */
function wetting(random: Random): number {
  return random.chance(0.62) ? 1 + random.below(3) : Math.max(2, Math.min(180, Math.round(random.logNormal(13, 0.9))))
}

/** Two neighbouring figures changed round; the amount itself where all figures are alike. */
export function swapDigits(honest: number, random: Random): number {
  const figures = String(honest)
  const places: number[] = []
  for (let place = 0; place + 1 < figures.length; place++) if (figures[place] !== figures[place + 1]) places.push(place)
  if (places.length === 0) return honest
  const place = random.pick(places)
  return Number(figures.slice(0, place) + figures[place + 1] + figures[place] + figures.slice(place + 2))
}

/** A factor well away from 1. */
function farFactor(random: Random): number {
  const size = 0.45 + random.exponential(0.55)
  return Math.exp(random.chance(0.55) ? -size : size)
}

/**
 * Reports entered under the wrong date, for a day or a run of days: each amount moves to the day after (or before); the
 * day at the open end goes without.
 */
function shiftDays(ask: MistakeAsk, day: number): void {
  const { table, gauge, random } = ask
  const isLater = random.chance(0.6)
  let length = 2
  while (length < 9 && random.chance(0.45)) length++
  const first = isLater ? day : day - length + 1
  const cells: number[] = []
  for (let index = first; index < first + length; index++) {
    const cell = index * table.gaugeCount + gauge
    const isPlain = index >= 1 && index < ask.untilDay && table.spanDays[cell] === 1 && table.kind[cell] === 0
    if (!isPlain || table.typed[cell] === NOTHING) return
    cells.push(cell)
  }
  const amounts = cells.map((cell) => table.typed[cell]!)
  const traces = cells.map((cell) => table.isTrace[cell]!)
  const step = isLater ? -1 : 1
  cells.forEach((cell, index) => {
    const from = index + step
    if (from < 0 || from >= cells.length) {
      clearCell(table, cell)
      return
    }
    if (amounts[from] === amounts[index] && traces[from] === traces[index]) return
    table.typed[cell] = amounts[from]!
    table.isTrace[cell] = traces[from]!
    table.kind[cell] = truthKind('day')
    const fromDay = Math.floor(cells[from]! / table.gaugeCount)
    table.ownFirst[cell] = fromDay
    table.ownLast[cell] = fromDay
  })
}
