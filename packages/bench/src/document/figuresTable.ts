/** The figures of all networks, a column for each network and half. */
import { bestPublished, type Half, lastHalf, type SetResult } from '../accuracy/runSet.ts'
import { titleOf } from '../plots/networkNames.ts'
import { figure, percent } from '../print/table.ts'
import { markdownTable } from './markdownTable.ts'

interface Column {
  result: SetResult
  half: Half
}

export function figuresTable(results: readonly SetResult[]): string {
  const columns = results.flatMap((result) => result.halves.map((half) => ({ result, half })))
  const headings = ['', ...columns.map(({ result, half }) => `${titleOf(result.set)}, ${half}`)]
  const rows = figureRows.map(([name, figureOf]) => [name, ...columns.map((column) => figureOf(column))])
  return markdownTable(headings, rows)
}

const figureRows: [string, (column: Column) => string][] = [
  ['days', ({ result, half }) => daysOf(result, half)],
  ['readings, good and wrong', ({ result, half }) => countsOf(result, half)],
  ['area under precision and recall, day after', (column) => figure(ours(column, 'dayAfter')?.area)],
  ['the same, same morning', (column) => figure(ours(column, 'sameMorning')?.area)],
  ['the same, best published check', ({ result, half }) => figure(bestPublished(result, half).halves[half]?.area)],
  ['recall at 1 % false alarms, day after', (column) => figure(ours(column, 'dayAfter')?.recallAt1)],
  ['the same, same morning', (column) => figure(ours(column, 'sameMorning')?.recallAt1)],
  ['the same, best published check', ({ result, half }) => figure(bestPublished(result, half).halves[half]?.recallAt1)],
  ['of those found, the likeliest mistake is right', (column) => percent(ours(column, 'dayAfter')?.namedRightShare)],
  [
    'of those named right, the proposed amount is right',
    (column) => percent(ours(column, 'dayAfter')?.amountRightShare),
  ],
  ['leave-one-out CRPS, mm', (column) => figure(expectation(column)?.scores.crpsMm)],
  ['the same, kriging of roots, same gauge-days', (column) => figure(expectation(column)?.krigingCrpsMm)],
  ['ours over kriging', (column) => figure(expectation(column)?.ratio)],
  ['inside the central 90 %, median 1 mm or more', (column) => percent(expectation(column)?.scores.interval.inside)],
  ['below it', (column) => percent(expectation(column)?.scores.interval.below)],
  ['above it', (column) => percent(expectation(column)?.scores.interval.above)],
]

function ours({ result, half }: Column, check: 'dayAfter' | 'sameMorning') {
  return result.ours[check]?.halves[half]
}

/** Expectations are scored on the last half only. */
function expectation({ result, half }: Column) {
  return half === lastHalf(result.halves) ? result.ours.expectation : null
}

function daysOf(result: SetResult, half: Half): string {
  const days = result.network.days[half]
  return days === undefined ? '-' : `${days.from} to ${days.to}`
}

function countsOf(result: SetResult, half: Half): string {
  const scores = result.published[0]!.halves[half]!
  return `${scores.goodCount.toLocaleString('en')} and ${scores.wrongCount.toLocaleString('en')}`
}
