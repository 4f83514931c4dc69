import type { DayReview } from '@gaugewright/contract'
import { useMemo } from 'react'
import { Choice } from '../../ui/Choice.tsx'
import { useWords } from '../../words/WordsContext.tsx'
import { DocketList } from './DocketList.tsx'
import type { Effect } from './effect.ts'
import { RollTable } from './RollTable.tsx'
import styles from './TodayPage.module.css'
import type { Morning } from './useMorning.ts'

type Props = { review: DayReview; morning: Morning; effect: Effect | null }

/** The docket, or the whole roll. */
export function ListPane({ review, morning, effect }: Props) {
  const { words } = useWords()
  const { shown, chosen } = morning
  const oddsBefore = useMemo(
    () => new Map(effect?.outcome?.findings.map(({ readingId, before }) => [readingId, before])),
    [effect],
  )
  return (
    <section id="docket" className={styles.list} aria-labelledby="list-heading" tabIndex={-1}>
      <h2 id="list-heading" className="sr-only">
        {shown.list === 'docket' ? words.docket : words.roll}
      </h2>
      <div className={styles.listHead}>
        <Choice
          label={words.panels}
          labelHidden
          value={shown.list}
          options={[
            { value: 'docket', label: `${words.docket} ${review.facts.toDecide}` },
            { value: 'roll', label: `${words.roll} ${review.facts.expected}` },
          ]}
          onChange={shown.showList}
        />
      </div>
      <div className={styles.scroll}>
        {shown.list === 'docket' ? (
          <DocketList
            review={review}
            chosenId={morning.readingId}
            oddsBefore={oddsBefore}
            onChoose={(gaugeId) => morning.choose(gaugeId)}
          />
        ) : (
          <RollTable
            roll={review.roll}
            day={review.day}
            filter={shown.filter}
            onFilter={shown.setFilter}
            search={shown.search}
            onSearch={shown.setSearch}
            searchRef={shown.searchRef}
            chosenGaugeId={chosen?.gaugeId ?? null}
            oddsBefore={oddsBefore}
            onChoose={(gaugeId) => morning.choose(gaugeId)}
            onOrder={shown.keepOrder}
          />
        )}
      </div>
    </section>
  )
}
