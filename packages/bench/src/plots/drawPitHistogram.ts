/** A histogram of probability integral transforms, with the range that chance alone would give each bin. */
import * as Plot from '@observablehq/plot'
import type { PitHistogram } from '../score/pitHistogram.ts'
import { drawPart, type Part } from './drawing.ts'
import { bandOpacity } from './legend.ts'
import { ink, quietInk, series } from './palette.ts'

/** Heights are shares times the number of bins: 1 is as expected. */
export function drawPitHistogram(title: string, { bins, count }: PitHistogram): Part {
  const n = bins.length
  const rows = bins.map((bin, place) => ({
    x1: place / n,
    x2: (place + 1) / n,
    density: bin.share * n,
    low: 1 - bin.independentHalf * n,
    high: 1 + bin.independentHalf * n,
    lowByDay: Math.max(0, 1 - bin.byDayHalf * n),
    highByDay: 1 + bin.byDayHalf * n,
  }))
  return drawPart({
    width: 300,
    height: 190,
    marginLeft: 40,
    marginRight: 12,
    marginTop: 34,
    marginBottom: 40,
    x: {
      domain: [0, 1],
      label: 'share of the expectation below the reading',
      labelAnchor: 'center',
      labelArrow: 'none',
      ticks: 5,
    },
    y: { domain: [0, Math.max(1.6, ...rows.map((row) => row.density))], label: null, ticks: 4, grid: true },
    marks: [
      Plot.text([`${title}: ${count.toLocaleString('en')} readings`], {
        frameAnchor: 'top',
        dy: -20,
        fontWeight: 600,
        fontSize: 12,
      }),
      Plot.rect(rows, {
        x1: 'x1',
        x2: 'x2',
        y1: 0,
        y2: 'density',
        fill: series.dayAfter.colour,
        fillOpacity: 0.45,
        insetLeft: 0.5,
        insetRight: 0.5,
      }),
      Plot.rect(rows, {
        x1: 'x1',
        x2: 'x2',
        y1: 'lowByDay',
        y2: 'highByDay',
        fill: quietInk,
        fillOpacity: bandOpacity,
      }),
      Plot.ruleY(rows, { x1: 'x1', x2: 'x2', y: 'low', stroke: ink, strokeWidth: 1 }),
      Plot.ruleY(rows, { x1: 'x1', x2: 'x2', y: 'high', stroke: ink, strokeWidth: 1 }),
      Plot.ruleY([0]),
    ],
  })
}
