import type { RollRow } from '@gaugewright/contract'
import { useVirtualizer } from '@tanstack/react-virtual'
import { type Ref, useEffect, useMemo, useRef, useState } from 'react'
import { Choice } from '../../ui/Choice.tsx'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import styles from './RollTable.module.css'
import {
  countAnswers,
  filterRoll,
  type RollColumn,
  type RollFilter,
  type RollOrder,
  rollColumns,
  rollFilters,
  sortRoll,
} from './rollView.ts'
import { VerdictTag } from './VerdictTag.tsx'

const numeric = new Set<RollColumn>(['amount', 'accepted', 'odds'])

type Props = {
  roll: readonly RollRow[]
  day: string
  filter: RollFilter
  onFilter: (filter: RollFilter) => void
  search: string
  onSearch: (search: string) => void
  searchRef: Ref<HTMLInputElement>
  chosenGaugeId: string | null
  /** Odds of standing before the last decision, of the readings that it moved. */
  oddsBefore: ReadonlyMap<string, number>
  onChoose: (gaugeId: string) => void
  /** Receives the rows in the order shown, for stepping with j and k. */
  onOrder: (gaugeIds: string[]) => void
}

export function RollTable(props: Props) {
  const { roll, filter, search, chosenGaugeId, onChoose, onOrder } = props
  const { words, format } = useWords()
  const [sorting, setSorting] = useState<RollOrder | null>(null)
  const rows = useMemo(() => sortRoll(filterRoll(roll, filter, search), sorting), [roll, filter, search, sorting])
  const counts = useMemo(() => countAnswers(roll), [roll])
  const scroller = useRef<HTMLDivElement>(null)
  const virtual = useVirtualizer({
    count: rows.length,
    getScrollElement: () => scroller.current,
    estimateSize: () => 36,
    overscan: 12,
    scrollPaddingStart: 34,
  })
  const order = rows.map((row) => row.gaugeId)
  const orderKey = order.join()
  // biome-ignore lint/correctness/useExhaustiveDependencies: only a new order is news
  useEffect(() => onOrder(order), [orderKey])
  const isNew = useRef(true)
  const chosenAt = chosenGaugeId === null ? -1 : order.indexOf(chosenGaugeId)
  // biome-ignore lint/correctness/useExhaustiveDependencies: scroll only when the choice moves
  useEffect(() => {
    if (chosenAt >= 0) virtual.scrollToIndex(chosenAt, { align: isNew.current ? 'center' : 'auto' })
    isNew.current = false
  }, [chosenAt])
  const caption = fill(words.rollCaption, { day: format.dayLong(props.day) })
  const items = virtual.getVirtualItems()
  const before = items[0]?.start ?? 0
  const after = virtual.getTotalSize() - (items.at(-1)?.end ?? 0)
  return (
    <div className={styles.roll}>
      <div className={styles.tools}>
        <input
          ref={props.searchRef}
          type="search"
          className={styles.search}
          placeholder={words.rollSearch}
          aria-label={words.rollSearch}
          aria-keyshortcuts="/"
          value={search}
          onChange={(event) => props.onSearch(event.target.value)}
          onKeyDown={(event) => {
            if (event.key === 'Enter' && order[0]) {
              onChoose(order[0])
              event.currentTarget.blur()
            }
          }}
        />
        <Choice
          label={words.rollFilter}
          labelHidden
          value={filter}
          options={rollFilters
            .filter((value) => value === 'all' || value === filter || counts[value] > 0)
            .map((value) => ({
              value,
              label: `${value === 'all' ? words.rollAll : words.answers[value]} ${counts[value]}`,
            }))}
          onChange={props.onFilter}
        />
        <p className={styles.count} aria-live="polite">
          {fill(words.rollCount, { shown: rows.length, total: roll.length })}
        </p>
      </div>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolling region must be reachable by keyboard */}
      <section ref={scroller} className={styles.scroller} tabIndex={0} aria-label={caption}>
        <table className={styles.table} aria-rowcount={rows.length + 1}>
          <caption className="sr-only">{caption}</caption>
          <thead>
            <tr aria-rowindex={1}>
              {rollColumns.map((id) => {
                const sorted = sorting?.column === id ? (sorting.descending ? 'descending' : 'ascending') : 'none'
                const label = words.columns[id]
                return (
                  <th
                    key={id}
                    scope="col"
                    aria-sort={sorted}
                    className={numeric.has(id) ? styles.number : ''}
                    data-column={id}
                  >
                    <button
                      type="button"
                      title={fill(words.sortBy, { column: label })}
                      onClick={() => setSorting({ column: id, descending: sorted === 'ascending' })}
                    >
                      {label}
                      <span aria-hidden="true">
                        {sorted === 'ascending' ? ' ▲' : sorted === 'descending' ? ' ▼' : ''}
                      </span>
                    </button>
                  </th>
                )
              })}
            </tr>
          </thead>
          <tbody>
            {before > 0 ? <Spacer height={before} /> : null}
            {items.map((item) => {
              const row = rows[item.index]
              return row ? (
                <Row
                  key={row.gaugeId}
                  row={row}
                  index={item.index}
                  measure={virtual.measureElement}
                  isChosen={row.gaugeId === chosenGaugeId}
                  oddsBefore={props.oddsBefore.get(row.readingId ?? '')}
                  onChoose={onChoose}
                />
              ) : null
            })}
            {after > 0 ? <Spacer height={after} /> : null}
          </tbody>
        </table>
        {rows.length === 0 ? <p className={styles.none}>{words.rollNone}</p> : null}
      </section>
    </div>
  )
}

function Spacer({ height }: { height: number }) {
  return (
    <tr aria-hidden="true">
      <td colSpan={rollColumns.length} style={{ height, padding: 0 }} />
    </tr>
  )
}

type RowProps = {
  row: RollRow
  index: number
  measure: (element: HTMLElement | null) => void
  isChosen: boolean
  oddsBefore: number | undefined
  onChoose: (gaugeId: string) => void
}

function Row({ row, index, measure, isChosen, oddsBefore, onChoose }: RowProps) {
  const { words, format } = useWords()
  const isOpen = row.standsOdds !== null && row.decision === null && row.standsOdds < 0.9
  return (
    <tr
      ref={measure}
      data-index={index}
      aria-rowindex={index + 2}
      aria-current={isChosen ? 'true' : undefined}
      className={`${styles.row} ${isChosen ? styles.chosen : ''}`}
      onClick={() => onChoose(row.gaugeId)}
    >
      <th scope="row">
        <button type="button" className={styles.name} onClick={() => onChoose(row.gaugeId)}>
          {row.name}
        </button>
      </th>
      <td data-column="code">
        <code>{row.code}</code>
      </td>
      <td data-column="area">{row.area}</td>
      <td data-answer={row.answer}>
        {row.awayUntil === undefined
          ? words.answers[row.answer]
          : fill(words.awayUntil, { day: format.dayShort(row.awayUntil) })}
      </td>
      <td className={styles.number}>
        {row.amountUm === null ? '' : format.amountBare(row.amountUm, row.isTrace)}
        {row.spanDays > 1 ? <small> /{fill(words.days, { count: row.spanDays })}</small> : null}
      </td>
      <td className={styles.number} data-column="accepted">
        {row.readingId === null ? '' : format.amountBare(row.acceptedUm, row.isTrace && row.acceptedUm === 0)}
      </td>
      <td className={`${styles.number} ${isOpen ? styles.doubt : ''}`}>
        {row.standsOdds === null ? '' : format.percentTight(row.standsOdds)}
        {oddsBefore === undefined ? null : (
          <small className={styles.was}>{fill(words.whatIf.was, { odds: format.percentTight(oddsBefore) })}</small>
        )}
      </td>
      <td>{row.decision?.by.kind === 'person' ? <VerdictTag decision={row.decision} /> : null}</td>
    </tr>
  )
}
