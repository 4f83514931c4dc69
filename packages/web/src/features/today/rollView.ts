/** Pure view of the roll: filter by answer and by search text. Order is the table's matter. */
import type { RollRow } from '@gaugewright/contract'

export const rollFilters = ['all', 'read', 'read late', 'multi-day open', 'away', 'silent'] as const
export type RollFilter = (typeof rollFilters)[number]

/** Text for comparing what people search: without case and accents. */
export function plain(text: string): string {
  return text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase()
}

/** Rows with the answer asked for whose name, code, county or observer holds every word typed. */
export function filterRoll(rows: readonly RollRow[], filter: RollFilter, search: string): RollRow[] {
  const wanted = plain(search).split(/\s+/).filter(Boolean)
  return rows.filter((row) => {
    if (filter !== 'all' && row.answer !== filter) return false
    const text = plain([row.name, row.code, row.area ?? '', row.observerName ?? ''].join(' '))
    return wanted.every((word) => text.includes(word))
  })
}

/** How many gauges gave each answer; filters nobody needs today can be left away. */
export function countAnswers(rows: readonly RollRow[]): Record<RollFilter, number> {
  const counts: Record<RollFilter, number> = {
    all: rows.length,
    read: 0,
    'read late': 0,
    'multi-day open': 0,
    away: 0,
    silent: 0,
  }
  for (const row of rows) counts[row.answer] += 1
  return counts
}

export const rollColumns = ['name', 'code', 'area', 'answer', 'amount', 'accepted', 'odds', 'decision'] as const
export type RollColumn = (typeof rollColumns)[number]
export type RollOrder = { column: RollColumn; descending: boolean }

const answerRank: Record<RollRow['answer'], number> = {
  silent: 0,
  away: 1,
  'multi-day open': 2,
  'read late': 3,
  read: 4,
}

/** What a column sorts by: null where the row has nothing there, which always comes last. */
function sortKey(row: RollRow, column: RollColumn): string | number | null {
  switch (column) {
    case 'name':
      return row.name
    case 'code':
      return row.code
    case 'area':
      return row.area
    case 'answer':
      return answerRank[row.answer]
    case 'amount':
      return row.amountUm === null ? null : row.amountUm + (row.isTrace ? 0.5 : 0)
    case 'accepted':
      return row.acceptedUm
    case 'odds':
      return row.standsOdds
    case 'decision':
      return row.decision?.by.kind === 'person' ? row.decision.verdict : null
  }
}

/** Rows in the order asked for; rows without a value last either way; equal rows keep their order. A new array. */
export function sortRoll(rows: readonly RollRow[], order: RollOrder | null): RollRow[] {
  if (!order) return [...rows]
  const collator = new Intl.Collator(undefined, { numeric: true })
  return [...rows].sort((a, b) => {
    const x = sortKey(a, order.column)
    const y = sortKey(b, order.column)
    if (x === null || y === null) return (x === null ? 1 : 0) - (y === null ? 1 : 0)
    const by = typeof x === 'string' ? collator.compare(x, String(y)) : x - Number(y)
    return order.descending ? -by : by
  })
}
