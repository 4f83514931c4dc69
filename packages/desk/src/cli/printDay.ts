/** The morning in the terminal: the day's facts, the docket, who has not read, the area totals. Pure. */
import { styleText } from 'node:util'
import type { DayReview, DocketRow, RollRow, SuggestedAct } from '@gaugewright/contract'
import { formatAmount, umFromMm } from '@gaugewright/science'
import { plainTable } from './plainTable.ts'

export interface PrintDayOptions {
  colours: boolean
  columns: number
  wholeRoll: boolean
}

type Style = 'bold' | 'dim' | 'red' | 'yellow' | 'green' | 'cyan'

export function printDay(review: DayReview, options: PrintDayOptions): string {
  const paint = (style: Style, text: string): string =>
    options.colours ? styleText(style, text, { validateStream: false }) : text
  const { network, facts } = review
  const parts = [
    `${paint('bold', network.name)}, observing day ${paint('bold', review.day)} (24 h to ${network.readingTime}, ${network.timeZone})`,
    factsLine(review),
  ]
  parts.push(
    '',
    paint('bold', facts.toDecide === 0 ? 'Docket: nothing to decide' : `Docket: ${facts.toDecide} to decide`),
  )
  if (review.docket.length > 0) parts.push(docketTable(review, paint))
  const unread = review.roll.filter((row) => options.wholeRoll || (row.answer !== 'read' && row.answer !== 'read late'))
  parts.push('', paint('bold', options.wholeRoll ? 'Roll' : `Not read: ${unread.length}`))
  if (unread.length > 0)
    parts.push(options.wholeRoll ? rollTable(unread, review, paint) : unreadLines(unread, options.columns))
  if (review.areas.length > 0) parts.push('', paint('bold', 'Area means'), areaTable(review))
  return `${parts.join('\n')}\n`
}

function factsLine({ facts, network }: DayReview): string {
  const words = [`${facts.read + facts.late} of ${facts.expected} read`]
  if (facts.late > 0) words.push(`${facts.late} late`)
  if (facts.multiDayOpen > 0) words.push(`${facts.multiDayOpen} multi-day open`)
  if (facts.away > 0) words.push(`${facts.away} away`)
  words.push(`${facts.silent} silent`, `${facts.wet} wet`)
  if (facts.largestUm !== null) {
    const largest = formatAmount({ amountUm: facts.largestUm, isTrace: false }, network.unit, network.language, 'full')
    words.push(`largest ${largest} at ${facts.largestGauge}`)
  }
  return words.join(', ')
}

/** What stands in place of a proposal where none should be taken unasked. */
const SUGGESTED: Record<SuggestedAct, string> = { stands: 'let stand', amend: '', ask: 'ask the observer' }

function docketTable(review: DayReview, paint: (style: Style, text: string) => string): string {
  const { unit, language } = review.network
  const table = plainTable([
    'gauge',
    'name',
    `typed ${unit}`,
    'expected',
    'stands',
    'likeliest',
    `proposed ${unit}`,
    'map mm',
  ])
  const number = (amountUm: number, isTrace = false): string => formatAmount({ amountUm, isTrace }, unit, language)
  const range = (row: DocketRow): string =>
    `${number(umFromMm(row.expectedP10Mm))}-${number(umFromMm(row.expectedP90Mm))}`
  for (const row of review.docket) {
    const days = row.proposedFirstDay === row.proposedLastDay ? '' : ` (from ${row.proposedFirstDay})`
    table.push([
      row.code,
      row.name,
      paint('bold', number(row.amountUm, row.isTrace)),
      range(row),
      paint(row.standsOdds < 0.1 ? 'red' : 'yellow', percent(row.standsOdds)),
      row.decision === null
        ? `${row.likeliest} ${percent(row.likeliestOdds)}`
        : paint('cyan', `asked (${row.likeliest})`),
      row.suggested === 'amend' && row.proposedUm !== null
        ? `${number(row.proposedUm)}${days}`
        : SUGGESTED[row.suggested],
      row.mapChangeMm.toFixed(2),
    ])
  }
  return table.toString()
}

function rollTable(rows: readonly RollRow[], review: DayReview, paint: (style: Style, text: string) => string): string {
  const { unit, language } = review.network
  const table = plainTable([
    'gauge',
    'name',
    'area',
    'answer',
    `typed ${unit}`,
    `accepted ${unit}`,
    'stands',
    'decision',
  ])
  for (const row of rows) {
    const isRead = row.answer === 'read' || row.answer === 'read late'
    table.push([
      row.code,
      row.name,
      row.area ?? '',
      paint(isRead ? 'green' : row.answer === 'silent' ? 'yellow' : 'dim', row.answer),
      row.amountUm === null ? '' : formatAmount({ amountUm: row.amountUm, isTrace: row.isTrace }, unit, language),
      row.acceptedUm === null
        ? ''
        : formatAmount({ amountUm: row.acceptedUm, isTrace: row.isTrace && row.acceptedUm === 0 }, unit, language),
      row.standsOdds === null ? '' : percent(row.standsOdds),
      row.decision?.verdict ?? '',
    ])
  }
  return table.toString()
}

/** By answer, wrapped to the terminal. */
function unreadLines(rows: readonly RollRow[], columns: number): string {
  const lines: string[] = []
  for (const answer of ['silent', 'multi-day open', 'away'] as const) {
    const names = rows.filter((row) => row.answer === answer).map((row) => `${row.code} ${row.name}`)
    if (names.length === 0) continue
    let line = `  ${answer}:`
    for (const [index, name] of names.entries()) {
      const word = ` ${name}${index < names.length - 1 ? ',' : ''}`
      if (line.length + word.length > columns) {
        lines.push(line)
        line = '   '
      }
      line += word
    }
    lines.push(line)
  }
  return lines.join('\n')
}

function areaTable(review: DayReview): string {
  const { unit, language } = review.network
  const number = (amountMm: number): string =>
    formatAmount({ amountUm: umFromMm(amountMm), isTrace: false }, unit, language)
  const table = plainTable(['area', `mean ${unit}`, 'P10', 'P90', 'gauges'])
  for (const area of review.areas) {
    table.push([area.name, number(area.meanMm), number(area.p10Mm), number(area.p90Mm), String(area.gaugeCount)])
  }
  return table.toString()
}

function percent(share: number): string {
  return `${Math.round(share * 100)} %`
}
