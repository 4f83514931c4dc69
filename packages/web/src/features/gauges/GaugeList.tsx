import { type Ref, useState } from 'react'
import { Link } from 'wouter'
import { Button } from '../../ui/Button.tsx'
import { Choice } from '../../ui/Choice.tsx'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import styles from './GaugeList.module.css'
import { type GaugeEntry, type GaugeShow, gaugeShows } from './gaugesView.ts'

type Props = {
  gauges: readonly GaugeEntry[]
  total: number
  chosenCode: string | null
  show: GaugeShow
  onShow: (show: GaugeShow) => void
  search: string
  onSearch: (search: string) => void
  searchRef: Ref<HTMLInputElement>
  /** Goes to a gauge, from the search field. */
  onGo: (code: string) => void
}

/** Links drawn at once: a network of thousands is searched, not scrolled. */
const AT_ONCE = 120

export function GaugeList(props: Props) {
  const { gauges, total, chosenCode, show, search } = props
  const { words } = useWords()
  const own = words.gauges
  const [most, setMost] = useState(AT_ONCE)
  const shown = gauges.slice(0, Math.max(most, gauges.findIndex(({ code }) => code === chosenCode) + 1))
  return (
    <section className={styles.list} aria-label={own.list} data-testid="gauge-list">
      <div className={styles.tools}>
        <input
          ref={props.searchRef}
          type="search"
          className={styles.search}
          placeholder={own.search}
          aria-label={own.search}
          aria-keyshortcuts="/"
          value={search}
          onChange={(event) => props.onSearch(event.target.value)}
          onKeyDown={(event) => {
            if (event.key === 'Escape') event.currentTarget.blur()
            if (event.key === 'Enter' && gauges[0]) props.onGo(gauges[0].code)
          }}
        />
        <Choice
          label={own.show}
          labelHidden
          value={show}
          options={gaugeShows.map((value) => ({ value, label: own.shows[value] }))}
          onChange={props.onShow}
        />
        <p className={styles.count} aria-live="polite">
          {fill(own.count, { shown: gauges.length, total })}
        </p>
      </div>
      {gauges.length === 0 ? (
        <p className={styles.none}>{show === 'habits' && search === '' ? own.noHabits : own.none}</p>
      ) : (
        <ul>
          {shown.map((gauge) => (
            <Entry key={gauge.gaugeId} gauge={gauge} isChosen={gauge.code === chosenCode} />
          ))}
        </ul>
      )}
      {shown.length < gauges.length ? (
        <Button onClick={() => setMost(most + AT_ONCE)}>
          {fill(own.more, { count: Math.min(AT_ONCE, gauges.length - shown.length) })}
        </Button>
      ) : null}
    </section>
  )
}

function Entry({ gauge, isChosen }: { gauge: GaugeEntry; isChosen: boolean }) {
  const { words } = useWords()
  return (
    <li>
      <Link
        href={`/gauges/${encodeURIComponent(gauge.code)}`}
        className={styles.entry ?? ''}
        aria-current={isChosen ? 'true' : undefined}
      >
        <span className={styles.name}>{gauge.name}</span> <code>{gauge.code}</code>
        <span className={styles.habits}>{gauge.habits.map(({ kind }) => words.gauges.kinds[kind]).join(' · ')}</span>
      </Link>
    </li>
  )
}
