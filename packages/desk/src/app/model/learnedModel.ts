/**
 * The network's learned model: kept in memory, else read from the ledger's cache, else learned from the history.
 * It is learned again when the gauges or the science change, and in the background when the record has grown much. What
 * persons decided about days that are over is added to it, counted anew for each new day.
 */
import { createHash } from 'node:crypto'
import {
  type DecidedCounts,
  epochDayFromIso,
  type GaugeSet,
  type IsoDay,
  isoFromEpochDay,
  type Model,
  placeGauges,
  withDecidedRates,
  withDrills,
} from '@gaugewright/science'
import type { Gauge, Ledger } from '../../ports/ledger.ts'
import { DRILL_FACTORS_KEY } from '../drills/drillFactorsKey.ts'
import { historyTable } from './historyTable.ts'
import { keptCounts } from './keptCounts.ts'
import { learnInWorker } from './learnInWorker.ts'
import { modelFromText, textFromModel } from './modelCodec.ts'
import { scienceVersion } from './scienceVersion.ts'

export interface LearnedModel {
  model: Model
  gaugeSet: GaugeSet
  indexOf: ReadonlyMap<string, number>
  /** Names the gauges and their places. */
  gaugesKey: string
  /** Names the science, the days learned from, the gauges and the decisions. */
  version: string
  /** The same without the decisions. */
  learnedVersion: string
  /** What persons decided, as far as the model knows; null where nothing. */
  decided: DecidedCounts | null
}

interface Provenance {
  science: string
  gauges: string
  readings: number
  firstDay: string
  lastDay: string
}

const CACHE_KEY = 'model'
/** Share by which the record must grow before it is worth learning again. */
const MUCH_NEW = 0.1
/** The newest days are left out: their mistakes have not been seen by anybody yet. */
const YOUNGEST_DAYS = 4

const inMemory = new WeakMap<Ledger, Map<string, Promise<LearnedModel>>>()
const inMemoryDecided = new WeakMap<Ledger, { key: string; learned: Promise<LearnedModel> }>()
const relearning = new WeakMap<Ledger, Set<string>>()

export interface LearnedModelAsk {
  networkId: string
  gauges: readonly Gauge[]
  range: { firstDay: string; lastDay: string; readings: number }
  signal?: AbortSignal
}

export async function learnedModel(ledger: Ledger, ask: LearnedModelAsk): Promise<LearnedModel> {
  const kept = inMemory.get(ledger) ?? new Map<string, Promise<LearnedModel>>()
  inMemory.set(ledger, kept)
  const gaugesKey = gaugesKeyOf(ask.gauges)
  const key = `${ask.networkId}:${gaugesKey}`
  let learned = kept.get(key)
  if (learned === undefined) {
    learned = readOrLearn(ledger, ask, gaugesKey)
    kept.set(key, learned)
    learned.catch(() => kept.delete(key))
  }
  const current = await learned
  if (hasGrownMuch(provenanceFrom(current.version), ask.range.readings)) relearnBehind(ledger, ask, gaugesKey, key)
  return decided(ledger, ask, current, key)
}

/** The learned model with what was decided about the days before the newest ones; the same object for a whole day. */
function decided(ledger: Ledger, ask: LearnedModelAsk, learned: LearnedModel, network: string): Promise<LearnedModel> {
  const untilDay = oldEnough(ask.range)
  return decidedWith(ledger, ask, learned, `${network} ${learned.version} ${untilDay}`, untilDay)
}

async function decidedWith(
  ledger: Ledger,
  ask: LearnedModelAsk,
  learned: LearnedModel,
  place: string,
  untilDay: IsoDay,
): Promise<LearnedModel> {
  const drills = await ledger.cached(ask.networkId, DRILL_FACTORS_KEY)
  const key = `${place} ${drills?.body ?? ''}`
  const before = inMemoryDecided.get(ledger)
  if (before?.key === key) return before.learned
  const made = withDrilled(ledger, ask, learned, drills?.body ?? null).then((drilled) =>
    withDecisions(ledger, ask, drilled, untilDay),
  )
  inMemoryDecided.set(ledger, { key, learned: made })
  made.catch(() => inMemoryDecided.delete(ledger))
  return made
}

/** What observers showed in drills, where they did any: it fades with the readings of their gauges. */
async function withDrilled(
  ledger: Ledger,
  ask: LearnedModelAsk,
  learned: LearnedModel,
  body: string | null,
): Promise<LearnedModel> {
  const kept = body === null ? [] : Object.entries(JSON.parse(body) as Record<string, number>)
  if (kept.length === 0) return learned
  const count = learned.model.mistakeFactor.length
  const factors = new Float64Array(count).fill(1)
  const readings = new Float64Array(count)
  for (const [gaugeId, factor] of kept) {
    const place = learned.indexOf.get(gaugeId)
    if (place === undefined) continue
    factors[place] = factor
    const { firstDay, lastDay } = ask.range
    readings[place] = (await ledger.readingsOfGauge(ask.networkId, gaugeId, firstDay, lastDay)).length
  }
  const model = withDrills(learned.model, factors, readings)
  return model === learned.model ? learned : { ...learned, model, version: `${learned.version}, drills ${body}` }
}

async function withDecisions(
  ledger: Ledger,
  ask: LearnedModelAsk,
  learned: LearnedModel,
  untilDay: IsoDay,
): Promise<LearnedModel> {
  const { gaugesKey, indexOf } = learned
  const { firstDay } = ask.range
  const counted = await keptCounts(ledger, { ...ask, indexOf, firstDay, untilDay, gaugesKey })
  if (counted === null) return learned
  const model = withDecidedRates(learned.model, counted.counts)
  if (model === learned.model) return learned
  return { ...learned, model, version: `${learned.version}, ${counted.version}`, decided: counted.counts }
}

/** The newest day that is learned from. */
function oldEnough({ firstDay, lastDay }: LearnedModelAsk['range']): IsoDay {
  const newest = isoFromEpochDay(epochDayFromIso(lastDay) - YOUNGEST_DAYS)
  return newest > firstDay ? newest : lastDay
}

async function readOrLearn(ledger: Ledger, ask: LearnedModelAsk, gaugesKey: string): Promise<LearnedModel> {
  const cached = await ledger.cached(ask.networkId, CACHE_KEY)
  if (cached !== null) {
    const made = provenanceFrom(cached.version)
    if (made !== null && made.science === scienceVersion() && made.gauges === gaugesKey) {
      const model = modelFromText(cached.body)
      if (model !== null) return learnedFrom(model, ask.gauges, gaugesKey, cached.version)
    }
  }
  return learnAndKeep(ledger, ask, gaugesKey)
}

async function learnAndKeep(ledger: Ledger, ask: LearnedModelAsk, gaugesKey: string): Promise<LearnedModel> {
  const { gaugeSet, indexOf } = placed(ask.gauges)
  const { firstDay } = ask.range
  const lastDay = oldEnough(ask.range)
  const history = await historyTable(ledger, ask.networkId, indexOf, firstDay, lastDay, ask.signal)
  const model = await learnInWorker(gaugeSet, history, ask.signal)
  const version = versionFrom({
    science: scienceVersion(),
    gauges: gaugesKey,
    readings: ask.range.readings,
    firstDay,
    lastDay,
  })
  await ledger.saveCached(ask.networkId, CACHE_KEY, version, textFromModel(model))
  return learnedFrom(model, ask.gauges, gaugesKey, version)
}

function learnedFrom(model: Model, gauges: readonly Gauge[], gaugesKey: string, version: string): LearnedModel {
  return { model, ...placed(gauges), gaugesKey, version, learnedVersion: version, decided: null }
}

/** Learns beside the work; the next review uses it. What fails here is tried again at the next review. */
function relearnBehind(ledger: Ledger, ask: LearnedModelAsk, gaugesKey: string, key: string): void {
  const running = relearning.get(ledger) ?? new Set<string>()
  relearning.set(ledger, running)
  if (running.has(key)) return
  running.add(key)
  learnAndKeep(ledger, ask, gaugesKey)
    .then((learned) => inMemory.get(ledger)?.set(key, Promise.resolve(learned)))
    .catch(() => undefined)
    .finally(() => running.delete(key))
}

function placed(gauges: readonly Gauge[]): { gaugeSet: GaugeSet; indexOf: ReadonlyMap<string, number> } {
  const gaugeSet = placeGauges(gauges.map(({ id, latDeg, lonDeg, elevationM }) => ({ id, latDeg, lonDeg, elevationM })))
  return { gaugeSet, indexOf: new Map(gauges.map((gauge, index) => [gauge.id, index])) }
}

function gaugesKeyOf(gauges: readonly Gauge[]): string {
  const digest = createHash('sha1')
  for (const gauge of gauges) digest.update(`${gauge.id} ${gauge.latDeg} ${gauge.lonDeg} ${gauge.elevationM}\n`)
  return digest.digest('base64url').slice(0, 12)
}

function hasGrownMuch(made: Provenance | null, readings: number): boolean {
  return made === null || readings > made.readings * (1 + MUCH_NEW) + 30
}

function versionFrom(made: Provenance): string {
  return `science ${made.science}, gauges ${made.gauges}, ${made.readings} readings, ${made.firstDay}..${made.lastDay}`
}

function provenanceFrom(version: string): Provenance | null {
  const parts = /^science (\S+), gauges (\S+), (\d+) readings, (\S+)\.\.(\S+)$/.exec(version)
  if (parts === null) return null
  const [, science = '', gauges = '', readings = '0', firstDay = '', lastDay = ''] = parts
  return { science, gauges, readings: Number(readings), firstDay, lastDay }
}
