/** Recall at 1 % false alarms, a row for each mistake, a mark for each check. */
import * as Plot from '@observablehq/plot'
import { drawPart, type Part } from './drawing.ts'
import { marker } from './legend.ts'
import { quietInk } from './palette.ts'
import type { MistakeRecall } from './recallByMistake.ts'

export interface RecallSeries {
  recalls: readonly MistakeRecall[]
  colour: string
  symbol: 'circle' | 'square' | 'times'
}

/** The first series has the intervals and the counts. @param hasNames  whether the mistakes' names stand at the left */
export function drawRecallByMistake(title: string, series: readonly RecallSeries[], hasNames: boolean): Part {
  const first = series[0]!
  const rows = first.recalls.map((row) => row.mistake)
  return drawPart({
    width: hasNames ? 340 : 250,
    height: 60 + rows.length * 24,
    marginLeft: hasNames ? 102 : 12,
    marginRight: 44,
    marginTop: 38,
    marginBottom: 40,
    x: {
      domain: [0, 1],
      label: 'recall at 1 % false alarms',
      labelAnchor: 'center',
      labelArrow: 'none',
      ticks: 5,
      grid: true,
    },
    y: { domain: rows, type: 'point', padding: 0.6, label: null, ticks: hasNames ? rows : [], grid: true },
    marks: [
      Plot.text([title], { frameAnchor: 'top', dy: -28, fontWeight: 600, fontSize: 12 }),
      Plot.text(['cases'], { frameAnchor: 'top-right', dx: 38, dy: -12, fill: quietInk }),
      Plot.text(first.recalls, {
        y: 'mistake',
        text: (row: MistakeRecall) => row.count.toLocaleString('en'),
        frameAnchor: 'right',
        dx: 38,
        textAnchor: 'end',
        fill: quietInk,
      }),
      Plot.ruleY(first.recalls, { y: 'mistake', x1: 'low', x2: 'high', stroke: first.colour, strokeWidth: 1.5 }),
      ...[...series].reverse().map((one) =>
        marker(
          one.recalls.map((row) => ({ x: row.recall, y: row.mistake })),
          one,
        ),
      ),
    ],
  })
}
