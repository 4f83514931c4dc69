/** Precision against recall of a few rankings, and where each stands at 1 % false alarms. */
import * as Plot from '@observablehq/plot'
import type { PrecisionRecallCurve } from '../score/precisionRecallCurve.ts'
import { drawPart, type Part } from './drawing.ts'
import { marker } from './legend.ts'

export interface RankingSeries {
  curve: PrecisionRecallCurve
  recallAt1: number
  colour: string
  symbol: 'circle' | 'square' | 'times'
  dash: string | undefined
}

export function drawPrecisionRecall(title: string, rankings: readonly RankingSeries[]): Part {
  return drawPart({
    width: 300,
    height: 300,
    marginLeft: 46,
    marginRight: 14,
    marginTop: 34,
    marginBottom: 40,
    x: {
      domain: [0, 1],
      label: 'recall: share of wrong readings found',
      labelAnchor: 'center',
      labelArrow: 'none',
      ticks: 5,
      grid: true,
    },
    y: { domain: [0, 1], label: 'precision', labelArrow: 'none', ticks: 5, grid: true },
    marks: [
      Plot.text([title], { frameAnchor: 'top', dy: -24, fontWeight: 600, fontSize: 12 }),
      ...rankings.map(({ curve, colour, dash }) =>
        Plot.line(curve.recall, {
          x: (recall: number) => recall,
          y: curve.precision,
          stroke: colour,
          strokeWidth: 2,
          strokeDasharray: dash,
        }),
      ),
      ...rankings.map((ranking) =>
        marker([{ x: ranking.recallAt1, y: precisionAt(ranking.curve, ranking.recallAt1) }], ranking),
      ),
    ],
  })
}

/** The precision drawn at a recall: that of the curve's first point there or beyond. */
function precisionAt(curve: PrecisionRecallCurve, recall: number): number {
  const place = curve.recall.findIndex((reached) => reached >= recall - 1e-9)
  return curve.precision[place < 0 ? curve.precision.length - 1 : place]!
}
