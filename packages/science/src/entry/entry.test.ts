import { describe, expect, it } from 'vitest'
import { changed, firstDay, rainyNetwork, rowsOf } from '../../test/support/rainyNetwork.ts'
import { confirmedSlipShare } from '../mistakes/confirmedShares.ts'
import { findingAt, findingIndex } from '../mistakes/evidence.ts'
import { judge } from '../mistakes/judge.ts'
import { learnModel } from '../model/learnModel.ts'
import type { DailyTable } from '../network/dailyTable.ts'
import { checkAlone } from './checkAlone.ts'
import { entryQuestion } from './entryQuestion.ts'
import { judgeEntry } from './judgeEntry.ts'
import { pocketClimate } from './pocketClimate.ts'

const GAUGES = 60
const { gauges, table: whole } = rainyNetwork(77, GAUGES, 160)
const model = learnModel(gauges, rowsOf(whole, 0, 150))
const wetAt = (row: number, gauge: number): boolean => whole.amountMm[row * GAUGES + gauge]! >= 2
const wetOn = (row: number): number => Array.from({ length: GAUGES }, (_, g) => g).filter((g) => wetAt(row, g)).length
/** The wettest morning after what the model has learned from. */
const ROW = [151, 152, 153, 154, 155, 156, 157].reduce((best, row) => (wetOn(row) > wetOn(best) ? row : best))
const MORNING = firstDay + ROW
const ask = { fromDay: MORNING, toDay: MORNING, sameMorning: false }
const context = rowsOf(whole, ROW - 7, ROW + 3)
const reported = (gauge: number): number => context.amountMm[7 * GAUGES + gauge]!
/** Gauges with some millimetres on the morning, none of them missing. */
const wet = Array.from({ length: GAUGES }, (_, g) => g).filter((g) => reported(g) >= 2 && reported(g) < 40)

/** The morning before one gauge has sent its reading. */
function without(gauge: number): DailyTable {
  const table = changed(context, (amountMm, g, day) => (g === gauge && day === MORNING ? Number.NaN : amountMm))
  const cell = (MORNING - table.firstDay) * GAUGES + gauge
  table.spanDays[cell] = 0
  return table
}

const entryOf = (gauge: number, amountMm: number) => ({
  gauge,
  amountUm: Math.round(amountMm * 1000),
  isTrace: false,
  firstDay: MORNING,
  lastDay: MORNING,
})

describe('the check beside the neighbours', () => {
  it('lets what really fell pass, and asks back about ten times as much with the right amount offered', () => {
    expect(wet.length).toBeGreaterThan(8)
    let asked = 0
    let offered = 0
    for (const gauge of wet.slice(0, 12)) {
      const before = judge(gauges, without(gauge), model, ask)
      const trueMm = Math.round(reported(gauge) * 10) / 10
      if (judgeEntry(before, entryOf(gauge, trueMm)) !== null) asked++
      const slip = judgeEntry(before, entryOf(gauge, trueMm * 10))
      const amounts = slip === null || slip === 'cannot tell' ? [] : slip.alternatives.map(({ amountUm }) => amountUm)
      if (amounts.includes(Math.round(trueMm * 1000))) offered++
    }
    expect(asked).toBeLessThanOrEqual(1)
    expect(offered).toBeGreaterThanOrEqual(11)
  })

  it('asks exactly where the desk, once it had the reading, would rather believe a mistake', () => {
    for (const gauge of wet.slice(0, 6)) {
      const before = judge(gauges, without(gauge), model, ask)
      for (const factor of [0.1, 0.5, 1, 3, 10]) {
        const amountMm = Math.max(0.1, Math.round(reported(gauge) * factor * 10) / 10)
        const sent = changed(context, (mm, g, day) => (g === gauge && day === MORNING ? amountMm : mm))
        const judged = judge(gauges, sent, model, ask)
        const { standsOdds } = findingAt(judged, findingIndex(judged, gauge, MORNING))
        // Near even odds the two may settle on either side: the desk lets the neighbours feel the new reading too.
        if (Math.abs(standsOdds - 0.5) < 0.1) continue
        const question = judgeEntry(before, entryOf(gauge, amountMm))
        expect(question !== null, `gauge ${gauge}, ${amountMm} mm, stands ${standsOdds}`).toBe(standsOdds < 0.5)
      }
    }
  })

  it('leaves the judgement that it starts from as it was', () => {
    const gauge = wet[0]!
    const before = judge(gauges, without(gauge), model, ask)
    const stands = before.latent.stands.slice()
    const first = judgeEntry(before, entryOf(gauge, 321))
    expect(before.latent.stands).toEqual(stands)
    expect(before.latent.table.spanDays[7 * GAUGES + gauge]).toBe(0)
    expect(judgeEntry(before, entryOf(gauge, 321))).toEqual(first)
  })

  it('cannot tell of a day outside the table', () => {
    const before = judge(gauges, context, model, ask)
    const entry = { ...entryOf(3, 7.7), firstDay: MORNING + 40, lastDay: MORNING + 40 }
    expect(judgeEntry(before, entry)).toBe('cannot tell')
  })
})

describe('the check by the gauge’s own climate', () => {
  const own = pocketClimate(model, 17)
  const alone = (amountMm: number, isTrace = false, previousUm: number | null = null) =>
    checkAlone(own, {
      amountUm: Math.round(amountMm * 1000),
      isTrace,
      firstDay: MORNING,
      lastDay: MORNING,
      previousUm,
    })

  it('asks nothing about a zero, a trace or usual rain, whatever the day before', () => {
    for (const amountMm of [0, 0.4, 3.1, 11.2]) expect(alone(amountMm), `${amountMm} mm`).toBeNull()
    expect(alone(0, true)).toBeNull()
    expect(alone(0, false, 0)).toBeNull()
  })

  it('asks about an amount that the place has hardly ever had, and offers a tenth of it', () => {
    const question = alone(264)
    expect(question?.alternatives.map(({ amountUm }) => amountUm)).toContain(26_400)
  })

  it('survives being sent as text', () => {
    const { climate } = own
    const sent = JSON.parse(JSON.stringify({ dry: [...climate.dryShare], scores: [...climate.wetScore] }))
    expect(Float64Array.from(sent.dry)).toEqual(climate.dryShare)
    expect(sent.scores).toHaveLength(12 * 89)
  })
})

describe('entryQuestion', () => {
  const inches = { amountUm: 101_600, stepUm: 254, tubeUm: 25_400 }

  it('offers 0.40 in for 4.00 in where the point may have slipped, and never more than two things', () => {
    const question = entryQuestion(inches, [
      { kind: 'stands', odds: 0.1, detail: null },
      { kind: 'decimal', odds: 0.6, detail: { kind: 'decimal', places: 1 } },
      { kind: 'unit', odds: 0.4, detail: { kind: 'unit', measuredIn: 'mm' } },
      { kind: 'other', odds: 0.3, detail: null },
    ])
    // 4.00 mm is 0.157 in: 0.16 in on the gauge's steps.
    expect(question).toEqual({
      alternatives: [
        { kind: 'decimal', amountUm: 10_160 },
        { kind: 'unit', amountUm: 4_064 },
      ],
    })
  })

  it('is silent where the reading is as likely right as not', () => {
    expect(
      entryQuestion(inches, [
        { kind: 'stands', odds: 1, detail: null },
        { kind: 'decimal', odds: 1, detail: { kind: 'decimal', places: 1 } },
      ]),
    ).toBeNull()
  })

  it('adds a full tube where the first fill may be lost', () => {
    const question = entryQuestion({ ...inches, amountUm: 5_334 }, [{ kind: 'first-fill-lost', odds: 1, detail: null }])
    expect(question?.alternatives).toEqual([{ kind: 'first-fill-lost', amountUm: 30_734 }])
  })
})

describe('a confirmed reading', () => {
  it('is believed more: the odds of a slipped point fall to a tenth against its standing, others stay', () => {
    const gauge = wet[2]!
    const amountMm = Math.round(reported(gauge) * 100) / 10
    const sent = changed(context, (mm, g, day) => (g === gauge && day === MORNING ? amountMm : mm))
    const confirmed = { ...sent, isConfirmed: new Uint8Array(sent.spanDays.length) }
    confirmed.isConfirmed[7 * GAUGES + gauge] = 1
    const oddsIn = (table: DailyTable) => {
      const judged = judge(gauges, table, model, ask)
      const finding = findingAt(judged, findingIndex(judged, gauge, MORNING))
      return { ratio: finding.likeliestMistakeOdds / finding.standsOdds, kind: finding.likeliestMistake, finding }
    }
    const before = oddsIn(sent)
    const after = oddsIn(confirmed)
    expect(before.kind).toBe('decimal')
    expect(after.finding.standsOdds).toBeGreaterThan(before.finding.standsOdds)
    expect(after.kind === 'decimal' ? after.ratio / before.ratio : confirmedSlipShare).toBeLessThan(0.2)
  })
})
