/** All figures of the results as files of SVG, by name. */
import { bestPublished, type Half, lastHalf, type SetResult } from '../accuracy/runSet.ts'
import { drawPitHistogram } from './drawPitHistogram.ts'
import { drawBinCounts, drawReliability } from './drawReliability.ts'
import { drawResidualLegend } from './drawResidualMap.ts'
import { composeFigure, type FigureAsk } from './figure.ts'
import { drawLegend, type LegendItem } from './legend.ts'
import { sourceOf, titleOf } from './networkNames.ts'
import { ink, quietInk, series } from './palette.ts'
import { dryPanel, rankingPanel, recallPanel, residualPanel, standingPanel } from './panels.ts'

export interface FigureFile {
  /** Without folder. */
  name: string
  svg: string
}

/** Figures whose runs are not among the results are left out. */
export function drawFigures(results: readonly SetResult[]): FigureFile[] {
  const files: FigureFile[] = []
  const add = (name: string, ask: Omit<FigureAsk, 'source'>, of: readonly SetResult[]) => {
    if (of.length > 0) files.push({ name: `${name}.svg`, svg: composeFigure({ ...ask, source: sourceLines(of) }) })
  }
  const judged = results.filter((result) => result.ours.dayAfter !== null)
  const expected = results.filter((result) => result.ours.expectation !== null)

  const standing = judged.map(standingPanel)
  add(
    'reliability',
    {
      title: 'Do the odds of standing mean what they say?',
      note: 'Share of readings that nobody changed, by p_stands, with 95 % intervals; below, readings per bin (day after). Scales of log odds.',
      description:
        'Reliability of p_stands for each network: the share of readings that stand against the odds said, which lie near the diagonal when calibrated, and the number of readings in each bin.',
      legend: drawLegend([markOf('dayAfter'), markOf('sameMorning')]),
      rows: [standing.map(drawReliability), standing.map(drawBinCounts)],
    },
    judged,
  )
  add(
    'recall-by-mistake',
    {
      title: 'Which mistakes are found when 1 % of the good readings are doubted?',
      note: bestNames(judged),
      description:
        'Recall at one percent false alarms for each mistake and network: ours on the day after and on the same morning, beside the best published check.',
      legend: drawLegend([markOf('dayAfter'), markOf('sameMorning'), markOf('published')]),
      rows: [judged.map((result, place) => recallPanel(result, place === 0))],
    },
    judged,
  )
  add(
    'precision-recall',
    {
      title: 'Precision and recall',
      note: `Marks: at 1 % false alarms. ${bestNames(judged)}`,
      description:
        'Precision against recall for each network: ours on the day after and on the same morning, beside the best published check.',
      legend: drawLegend([lineOf('dayAfter'), lineOf('sameMorning'), lineOf('published')]),
      rows: [judged.map(rankingPanel)],
    },
    judged,
  )
  add(
    'pit',
    {
      title: 'Where do readings lie in their leave-one-out expectations?',
      note: 'Randomised within rounding cells and the chance of dry; height 1 is as expected. Wet: where the median expected is 1 mm or more.',
      description:
        'Histograms of the probability integral transform for each network, over all readings and where the median expected is one millimetre or more, with 95 percent ranges under uniformity.',
      legend: drawLegend([
        { label: '95 % range if all readings were independent', colour: ink, hasLine: true },
        { label: '95 % range if only days were', colour: quietInk, hasLine: true, isBand: true },
      ]),
      rows: [
        expected.map((result) =>
          drawPitHistogram(`${titleOf(result.set)}, all`, result.ours.expectation!.shape.pitAll),
        ),
        expected.map((result) =>
          drawPitHistogram(`${titleOf(result.set)}, wet`, result.ours.expectation!.shape.pitWet),
        ),
      ],
    },
    expected,
  )
  const dry = expected.map(dryPanel)
  add(
    'reliability-dry',
    {
      title: 'Does the chance of dry mean what it says?',
      note: 'Share of clean readings of zero, by the leave-one-out p_dry, with 95 % intervals for days drawn whole; below, readings per bin. Scales of log odds.',
      description:
        'Reliability of the chance of a dry day for each network: the share of zeros against the chance said, and the number of readings in each bin.',
      legend: null,
      rows: [dry.map(drawReliability), dry.map(drawBinCounts)],
    },
    expected,
  )
  for (const result of expected) {
    add(
      `residuals-${result.set}`,
      {
        title: `${titleOf(result.set)}: which gauges catch more or less than the others let expect?`,
        note: 'Mean share of the expectation below the reading, less 0.5, on days with 1 mm or more expected. Thick rim: beyond chance (two standard errors). ×: fewer than 10 such days.',
        description: `Map of mean residuals of the gauges of ${titleOf(result.set)}; circles by size, colour and sign.`,
        legend: drawResidualLegend(),
        rows: [[residualPanel(result)]],
      },
      [result],
    )
  }
  return files
}

function markOf(key: keyof typeof series): LegendItem {
  const { label, colour, symbol } = series[key]
  return { label, colour, symbol }
}

function lineOf(key: keyof typeof series): LegendItem {
  return { ...markOf(key), dash: series[key].dash, hasLine: true }
}

function bestNames(results: readonly SetResult[]): string {
  const names = results.map(
    (result) => `${titleOf(result.set)}, ${bestPublished(result, lastHalf(result.halves)).name}`,
  )
  return `Best published check by area: ${names.join('; ')}.`
}

const halfWords: Record<Half, string> = { first: 'first half', second: 'second half', all: 'both halves' }

/** Days and halves shown, then where the readings come from. */
function sourceLines(results: readonly SetResult[]): string[] {
  const blocks = results.map((result) => {
    const half = lastHalf(result.halves)
    const { from, to } = result.network.days[half]!
    return `${titleOf(result.set)} ${from} to ${to} (${halfWords[half]})`
  })
  return [
    `npm run bench:plots. ${blocks.join(', ')}.`,
    `Readings: ${results.map((result) => sourceOf(result.set)).join('; ')}.`,
  ]
}
