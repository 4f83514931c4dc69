/** What was said beside what happened, with 95 % intervals, and under it how many readings each bin holds. */
import * as Plot from '@observablehq/plot'
import type { ReliabilityBin } from '../score/reliabilityBins.ts'
import { drawPart, type Part } from './drawing.ts'
import { marker } from './legend.ts'
import { logOdds, logOddsDomain, logOddsTicks } from './logOdds.ts'
import { gridInk, quietInk } from './palette.ts'

export interface ReliabilitySeries {
  bins: readonly ReliabilityBin[]
  colour: string
  symbol: 'circle' | 'square'
}

export interface ReliabilityPanel {
  title: string
  /** The first one's readings are counted below. */
  series: readonly ReliabilitySeries[]
  saidLabel: string
  happenedLabel: string
}

const width = 300
const margins = { marginLeft: 52, marginRight: 12 }

export function drawReliability(panel: ReliabilityPanel): Part {
  return drawPart({
    width,
    height: 290,
    ...margins,
    marginTop: 34,
    marginBottom: 28,
    x: { domain: logOddsDomain, label: null, ...logOddsTicks, grid: true },
    y: { domain: logOddsDomain, label: panel.happenedLabel, labelArrow: 'none', ...logOddsTicks, grid: true },
    marks: [
      Plot.text([panel.title], { frameAnchor: 'top', dy: -24, fontWeight: 600, fontSize: 12 }),
      Plot.link([0], {
        x1: logOddsDomain[0],
        y1: logOddsDomain[0],
        x2: logOddsDomain[1],
        y2: logOddsDomain[1],
        stroke: quietInk,
        strokeDasharray: '4,3',
      }),
      ...panel.series.flatMap((one) => {
        const bins = one.bins.filter((bin) => bin.count > 0)
        const points = bins.map((bin) => ({
          x: logOdds(bin.meanSaid),
          y: logOdds(bin.share),
          low: logOdds(bin.low),
          high: logOdds(bin.high),
        }))
        return [
          Plot.ruleX(points, { x: 'x', y1: 'low', y2: 'high', stroke: one.colour, strokeWidth: 1.5 }),
          marker(points, one),
        ]
      }),
    ],
  })
}

/** Readings per bin of the first series, on a log scale. */
export function drawBinCounts(panel: ReliabilityPanel): Part {
  const first = panel.series[0]!
  const bins = first.bins.filter((bin) => bin.count > 0)
  return drawPart({
    width,
    height: 110,
    ...margins,
    marginTop: 22,
    marginBottom: 36,
    x: { domain: logOddsDomain, label: panel.saidLabel, labelAnchor: 'center', labelArrow: 'none', ...logOddsTicks },
    y: {
      type: 'log',
      domain: [1, 1_000_000],
      label: 'readings',
      labelArrow: 'none',
      ticks: [1, 100, 10_000, 1_000_000],
      tickFormat: (count: number) => Intl.NumberFormat('en', { notation: 'compact' }).format(count),
      grid: true,
    },
    marks: [
      Plot.rect(bins, {
        x1: (bin: ReliabilityBin) => logOdds(bin.from),
        x2: (bin: ReliabilityBin) => logOdds(bin.below),
        y1: 1,
        y2: 'count',
        fill: first.colour,
        fillOpacity: 0.75,
        stroke: gridInk,
      }),
    ],
  })
}
