/** The figures of one network as text. */
import { isoFromDay } from '../data/parseWideCsv.ts'
import { figure, percent, table } from '../print/table.ts'
import type { FindingScores } from '../score/scoreFindings.ts'
import { printRule } from './printRule.ts'
import { bestPublished, lastHalf, type SetResult } from './runSet.ts'

/** @param gaugeIds in the order of the tables */
export function printSet(result: SetResult, gaugeIds: readonly string[]): string {
  const parts = [`\n=== ${result.set} ===`, checksTable(result), krigingTable(result)]
  const { dayAfter, sameMorning, expectation } = result.ours
  const half = lastHalf(result.halves)
  if (expectation !== null) {
    const { scores } = expectation
    parts.push(
      `Expectation, leave-one-out, ${half} half: CRPS ${figure(scores.crpsMm)} mm on ${scores.count} readings, ` +
        `kriging of roots on the same ${figure(expectation.krigingCrpsMm)} mm, ratio ${figure(expectation.ratio)}.\n` +
        `Where the median is 1 mm or more (${scores.interval.count}): ${figure(scores.interval.inside)} inside the central 90 %, ` +
        `${figure(scores.interval.below)} below, ${figure(scores.interval.above)} above.`,
    )
  }
  for (const ours of [dayAfter, sameMorning]) {
    const scores = ours?.halves[half]
    if (scores !== undefined) parts.push(detail(`${ours!.name}, ${half} half`, scores, gaugeIds))
    for (const each of result.halves) {
      const rule = ours?.rule?.[each]
      if (rule !== undefined) parts.push(printRule(`What a rule would let through, ${ours!.name}, ${each} half`, rule))
    }
  }
  if (dayAfter === null) {
    const best = bestPublished(result, half)
    parts.push(kindsTable(`Best published check, ${best.name}, ${half} half`, best.halves[half]!))
  }
  for (const words of result.skipped) parts.push(`skipped: ${words}`)
  return parts.join('\n\n')
}

function checksTable(result: SetResult): string {
  const ours = [result.ours.dayAfter, result.ours.sameMorning].filter((check) => check !== null)
  const rows = [...result.published, ...ours].map((check) => [
    check.name,
    check.source,
    ...result.halves.flatMap((half) => {
      const scores = check.halves[half]!
      return [figure(scores.area), figure(scores.recallAt1)]
    }),
    figure(check.seconds, 1),
  ])
  const headings = ['check', 'source', ...result.halves.flatMap((half) => [`area ${half}`, 'recall 1 %']), 'seconds']
  const first = result.published[0]!.halves
  const counts = result.halves.map(
    (half) => `${half}: ${first[half]!.wrongCount} wrong, ${first[half]!.goodCount} good`,
  )
  return `Wrong readings found (${counts.join('; ')})\n${table(headings, rows)}`
}

function krigingTable(result: SetResult): string {
  const rows = result.kriging.map((kriging) => [
    kriging.kind,
    figure(kriging.nuggetShare, 2),
    figure(kriging.lengthKm, 0),
    figure(kriging.factor, 2),
    ...result.halves.map((half) => figure(kriging.halves[half]!.crpsMm)),
  ])
  const headings = ['variogram', 'nugget', 'length km', 'factor', ...result.halves.map((half) => `CRPS mm ${half}`)]
  return `Ordinary kriging of square roots, leave-one-out on clean readings\n${table(headings, rows)}`
}

function detail(title: string, scores: FindingScores, gaugeIds: readonly string[]): string {
  const summary =
    `${title}: found at p_stands below ${scores.limitPStands.toPrecision(3)}; of these the likeliest mistake is right ` +
    `${percent(scores.namedRightShare)}, and there the amount ${percent(scores.amountRightShare)} ` +
    `(${percent(scores.amountRightOwnDayShare)} when a single day is always the day judged); ` +
    `${scores.unjudgedCount} readings not judged.`
  const calibration = table(
    ['p_stands', 'readings', 'mean p_stands', 'really stand', 'apart'],
    scores.calibration.map((bin) => [
      `${bin.from} to ${bin.below}`,
      String(bin.count),
      figure(bin.meanPStands),
      figure(bin.standShare),
      figure(bin.standShare - bin.meanPStands),
    ]),
  )
  const strongest = table(
    ['gauge', 'day', 'reported', 'p_stands', 'called', 'proposed'],
    scores.strongestGood.map((row) => [
      gaugeIds[row.gauge] ?? '',
      isoFromDay(row.day),
      figure(row.reportedMm, 1),
      row.pStands.toPrecision(2),
      row.mistake ?? '',
      figure(row.proposedMm, 1),
    ]),
  )
  return [
    kindsTable(summary, scores),
    `Do the odds mean what they say?\n${calibration}`,
    `The strongest doubts about readings that nobody changed\n${strongest}`,
  ].join('\n\n')
}

function kindsTable(title: string, scores: FindingScores): string {
  const names = scores.kinds.some((kind) => kind.namedRight > 0)
  const rows = scores.kinds.map((kind) => {
    const row = [kind.kind, kind.role, kind.mistake, String(kind.count), figure(kind.found / kind.count, 2)]
    if (!names) return row
    const instead = Object.entries(kind.calledInstead).sort((a, b) => b[1] - a[1])
    return [
      ...row,
      figure(kind.namedRight / kind.found, 2),
      figure(kind.amountRight / kind.namedRight, 2),
      instead
        .slice(0, 3)
        .map(([name, count]) => `${name} ${count}`)
        .join(', '),
    ]
  })
  const headings = ['kind put in', 'role', 'our name', 'cases', 'recall 1 %']
  if (names) headings.push('named right', 'amount right', 'called instead')
  return `${title}\n${table(headings, rows)}`
}
