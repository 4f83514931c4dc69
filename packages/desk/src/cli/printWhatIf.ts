/** What a decision would do, in the terminal: map, area means, other readings, docket; now and then. Pure. */
import type { AreaMean, ChangedFinding, DayReview, DecideAsk, RollRow, WhatIf } from '@gaugewright/contract'
import { formatAmount, umFromMm, usualResolutionUm } from '@gaugewright/science'
import { plainTable } from './plainTable.ts'
import { whatIfWords } from './whatIfWords.ts'

export interface PrintWhatIfAsk {
  told: WhatIf
  review: DayReview
  row: RollRow
  decision: Pick<DecideAsk, 'verdict' | 'amended'>
}

export function printWhatIf({ told, review, row, decision }: PrintWhatIfAsk): string {
  const { unit, language } = review.network
  const words = whatIfWords[language]
  const { amended, verdict } = decision
  const to =
    amended === null ? '' : ` → ${formatAmount(amended, unit, language, 'full')}${daysText(amended, review.day)}`
  const lines = [`${row.code} ${row.name}, ${review.day}: ${words.head[verdict]}${to}. ${words.nothingDecided}`, '']
  if (verdict === 'asked') return `${[...lines, words.askedOnly].join('\n')}\n`
  lines.push(...mapLines(told, review), '', ...findingLines(told, review), '')
  const counts = words.toDecide.replace('{before}', String(told.toDecideBefore))
  lines.push(counts.replace('{after}', String(told.toDecideAfter)))
  return `${lines.join('\n')}\n`
}

/** Other days than the one looked at are named. */
function daysText({ firstDay, lastDay }: NonNullable<DecideAsk['amended']>, day: string): string {
  if (firstDay === lastDay) return lastDay === day ? '' : `, ${lastDay}`
  return `, ${firstDay} – ${lastDay}`
}

function mapLines(told: WhatIf, review: DayReview): string[] {
  const { unit, language } = review.network
  const words = whatIfWords[language]
  if (told.meanAbsoluteChangeMm === 0) return [words.mapStays]
  const number = (amountMm: number): string =>
    formatAmount({ amountUm: umFromMm(amountMm), isTrace: false }, unit, language)
  const moved = `${finer(told.meanAbsoluteChangeMm, unit, language)} ${unit}`
  const lines = [words.mapMoves.replace('{amount}', moved), '']
  const areas = changedAreas(told.before.areas, told.after.areas, number)
  if (areas.length > 0) {
    const table = plainTable([words.area, `${words.before} ${unit}`, `${words.after} ${unit}`])
    for (const row of areas) table.push(row)
    return [...lines, words.areas, table.toString()]
  }
  const step = formatAmount({ amountUm: usualResolutionUm(unit), isTrace: false }, unit, language, 'full')
  return [...lines, words.noArea.replace('{amount}', step)]
}

function changedAreas(
  before: readonly AreaMean[],
  after: readonly AreaMean[],
  number: (amountMm: number) => string,
): [name: string, now: string, then: string][] {
  const then = new Map(after.map(({ name, meanMm }) => [name, meanMm]))
  return before.flatMap(({ name, meanMm }): [string, string, string][] => {
    const now = number(meanMm)
    const next = number(then.get(name) ?? meanMm)
    return now === next ? [] : [[name, now, next]]
  })
}

function findingLines(told: WhatIf, review: DayReview): string[] {
  const { unit, language } = review.network
  const words = whatIfWords[language]
  if (told.findings.length === 0) return [words.noFinding]
  const stands = (when: string): string => `${words.stands} ${when}`
  const table = plainTable([
    words.gauge,
    words.name,
    words.typed.replace('{unit}', unit),
    stands(words.before),
    stands(words.after),
    words.mistake,
    '',
  ])
  for (const finding of told.findings) {
    const { before, after } = finding
    table.push([
      finding.code,
      finding.name,
      formatAmount(finding, unit, language),
      percent(before.standsOdds),
      percent(after.standsOdds),
      mistakeText(finding, words.mistakes),
      before.toDecide === after.toDecide ? '' : after.toDecide ? words.comes : words.leaves,
    ])
  }
  const rest = told.findingCount - told.findings.length
  return [words.findings, table.toString(), ...(rest > 0 ? [words.more.replace('{count}', String(rest))] : [])]
}

function mistakeText({ before, after }: ChangedFinding, names: Record<string, string>): string {
  const now = `${names[before.likeliest]} ${percent(before.likeliestOdds)}`
  const then = percent(after.likeliestOdds)
  return before.likeliest === after.likeliest ? `${now} → ${then}` : `${now} → ${names[after.likeliest]} ${then}`
}

/** One more decimal than amounts are read to: a mean over the whole map is small. */
function finer(amountMm: number, unit: 'in' | 'mm', language: string): string {
  const places = unit === 'in' ? 3 : 2
  const format = { minimumFractionDigits: places, maximumFractionDigits: places, useGrouping: false }
  return new Intl.NumberFormat(language, format).format(unit === 'in' ? amountMm / 25.4 : amountMm)
}

function percent(share: number): string {
  if (share > 0.99 && share < 1) return '>99 %'
  if (share > 0 && share < 0.01) return '<1 %'
  return `${Math.round(share * 100)} %`
}
