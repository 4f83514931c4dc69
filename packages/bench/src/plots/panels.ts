/** One network's panel of each figure, from its results on the half that is shown. */
import { bestPublished, lastHalf, type SetResult } from '../accuracy/runSet.ts'
import type { Part } from './drawing.ts'
import { drawPrecisionRecall } from './drawPrecisionRecall.ts'
import { drawRecallByMistake } from './drawRecallByMistake.ts'
import type { ReliabilityPanel } from './drawReliability.ts'
import { drawResidualMap } from './drawResidualMap.ts'
import { titleOf } from './networkNames.ts'
import { series } from './palette.ts'
import { recallByMistake } from './recallByMistake.ts'

export function standingPanel(result: SetResult): ReliabilityPanel {
  const half = lastHalf(result.halves)
  const of = (check: 'dayAfter' | 'sameMorning') => {
    const scores = result.ours[check]?.halves[half]
    const { colour, symbol } = series[check]
    return scores === undefined ? [] : [{ bins: scores.reliability, colour, symbol }]
  }
  return {
    title: titleOf(result.set),
    series: [...of('dayAfter'), ...of('sameMorning')],
    saidLabel: 'p_stands said',
    happenedLabel: 'share that stand',
  }
}

export function dryPanel(result: SetResult): ReliabilityPanel {
  const { colour, symbol } = series.dayAfter
  return {
    title: titleOf(result.set),
    series: [{ bins: result.ours.expectation!.shape.dry, colour, symbol }],
    saidLabel: 'p_dry said',
    happenedLabel: 'share of zeros',
  }
}

export function recallPanel(result: SetResult, hasNames: boolean): Part {
  const checks = checksOf(result).map(({ scores, look }) => ({ recalls: recallByMistake(scores), ...look }))
  return drawRecallByMistake(titleOf(result.set), checks, hasNames)
}

export function rankingPanel(result: SetResult): Part {
  const rankings = checksOf(result).map(({ scores, look }) => ({
    ...look,
    curve: scores.curve,
    recallAt1: scores.recallAt1,
  }))
  return drawPrecisionRecall(titleOf(result.set), rankings)
}

/** Ours and the best published check of a network, on the half that is shown. */
function checksOf(result: SetResult) {
  const half = lastHalf(result.halves)
  return [
    { check: result.ours.dayAfter, look: series.dayAfter },
    { check: result.ours.sameMorning, look: series.sameMorning },
    { check: bestPublished(result, half), look: series.published },
  ].flatMap(({ check, look }) => (check === null ? [] : [{ scores: check.halves[half]!, look }]))
}

export function residualPanel(result: SetResult): Part {
  const residuals = result.ours.expectation!.shape.gauges.map((gauge) => ({
    ...gauge,
    ...result.network.gauges[gauge.gauge]!,
  }))
  return drawResidualMap(residuals)
}
