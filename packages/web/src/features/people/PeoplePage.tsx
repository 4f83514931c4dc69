/** People: offers on their way to a first reading, and those who read; one of them in full. On a narrow screen one after the other. */
import type { Candidate, ObserverRow, PeopleDesk } from '@gaugewright/contract'
import { useQuery } from '@tanstack/react-query'
import { type ReactNode, useRef, useState } from 'react'
import { Link } from 'wouter'
import { peopleQuery } from '../../api/people.ts'
import { problemFrom } from '../../api/problemError.ts'
import { usePeopleLive } from '../../api/usePeopleLive.ts'
import { useSingleKeys } from '../../hooks/useSingleKeys.ts'
import { Button } from '../../ui/Button.tsx'
import { Choice } from '../../ui/Choice.tsx'
import { Key } from '../../ui/Key.tsx'
import { Notice } from '../../ui/Notice.tsx'
import { ScreenHeader } from '../../ui/ScreenHeader.tsx'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import { CandidatePanel } from './CandidatePanel.tsx'
import { ObserverPanel } from './ObserverPanel.tsx'
import { OfferDialog } from './OfferDialog.tsx'
import { OfferRows } from './OfferRows.tsx'
import styles from './PeoplePage.module.css'
import { foundObservers, foundOffers, keyOf, type PeopleShow } from './peopleView.ts'

type Props = {
  /** `offers/ID` or `observers/CODE`; null where the address names nobody. */
  chosen: string | null
  onGo: (key: string) => void
  tools: ReactNode
  /** What other features show about an observer or a candidate. */
  moreOfObserver?: (observer: ObserverRow) => ReactNode
  moreOfCandidate?: (candidate: Candidate) => ReactNode
  /** Above the lists: who is going quiet, whom to thank. */
  above?: ReactNode
}

export function PeoplePage({ chosen, onGo, tools, moreOfObserver, moreOfCandidate, above }: Props) {
  const { words } = useWords()
  const own = words.people
  const desk = useQuery(peopleQuery)
  usePeopleLive()
  const [show, setShow] = useState<PeopleShow>(chosen?.startsWith('observers') ? 'observers' : 'offers')
  const [search, setSearch] = useState('')
  const [isAdding, setIsAdding] = useState(false)
  const searchRef = useRef<HTMLInputElement>(null)
  const found =
    desk.data === undefined
      ? []
      : show === 'offers'
        ? foundOffers(desk.data, search)
        : foundObservers(desk.data, search)
  const shownKey = chosen ?? (found[0] ? keyOf(found[0]) : null)
  const step = (by: -1 | 1) => {
    const at = found.findIndex((one) => keyOf(one) === shownKey)
    const beside = found[at < 0 ? 0 : at + by]
    if (beside) onGo(keyOf(beside))
  }
  useSingleKeys({ j: () => step(1), k: () => step(-1), '/': () => searchRef.current?.focus() })
  const candidate = desk.data?.candidates.find((one) => keyOf(one) === shownKey)
  const observer = desk.data?.observers.find((one) => keyOf(one) === shownKey)
  return (
    <div className={styles.page}>
      <ScreenHeader networkName={desk.data?.network.name ?? ''} tools={tools}>
        <h1 className="sr-only">{words.screens.people}</h1>
      </ScreenHeader>
      <main className={styles.main}>
        {desk.data ? (
          <>
            <Figures desk={desk.data} />
            {above}
            <div className={styles.columns} data-chosen={chosen !== null}>
              <div className={styles.list}>
                <div className={styles.listTools}>
                  <Choice
                    label={own.lists}
                    labelHidden
                    value={show}
                    options={(['offers', 'observers'] as const).map((value) => ({
                      value,
                      label: `${own[value]} (${value === 'offers' ? desk.data.candidates.length : desk.data.observers.length})`,
                    }))}
                    onChange={(value) => {
                      setShow(value)
                      if (chosen !== null) onGo('')
                    }}
                  />
                  <input
                    ref={searchRef}
                    type="search"
                    className={styles.search}
                    placeholder={own.search}
                    aria-label={own.search}
                    aria-keyshortcuts="/"
                    value={search}
                    onChange={(event) => setSearch(event.target.value)}
                    onKeyDown={(event) => {
                      if (event.key === 'Escape') event.currentTarget.blur()
                      if (event.key === 'Enter' && found[0]) onGo(keyOf(found[0]))
                    }}
                  />
                  {show === 'offers' ? <Button onClick={() => setIsAdding(true)}>{own.addOffer}</Button> : null}
                </div>
                {found.length === 0 ? (
                  <p className={styles.none}>{show === 'offers' && search === '' ? own.noOffers : own.none}</p>
                ) : show === 'offers' ? (
                  <OfferRows candidates={found as Candidate[]} shownKey={shownKey} />
                ) : (
                  <ObserverRows observers={found as ObserverRow[]} shownKey={shownKey} />
                )}
              </div>
              <div className={styles.panel}>
                {candidate ? (
                  <CandidatePanel key={candidate.id} candidate={candidate} more={moreOfCandidate?.(candidate)} />
                ) : null}
                {observer ? (
                  <ObserverPanel key={observer.gaugeId} observer={observer} more={moreOfObserver?.(observer)} />
                ) : null}
              </div>
            </div>
          </>
        ) : desk.error ? (
          <Notice problem={problemFrom(desk.error)} onRetry={() => void desk.refetch()} />
        ) : (
          <p role="status">{words.loading}</p>
        )}
        {isAdding ? (
          <OfferDialog
            onClose={() => setIsAdding(false)}
            onDone={(id) => {
              setIsAdding(false)
              onGo(`offers/${id}`)
            }}
          />
        ) : null}
      </main>
    </div>
  )
}

function Figures({ desk }: { desk: PeopleDesk }) {
  const { words, format } = useWords()
  const own = words.people
  const { medianHoursToAnswer: answer, medianDaysToReading: reading, readingShare } = desk.figures
  const [before = '', between = '', after = '', end = ''] = own.keysHint.split(/\{next\}|\{previous\}|\{search\}/)
  return (
    <div>
      <p>
        {answer === null || reading === null || readingShare === null
          ? own.noFigures
          : fill(own.figures, {
              answer: fill(own.hours, { count: format.whole(answer) }),
              reading: fill(own.days, { count: format.whole(reading) }),
              share: format.percent(readingShare),
            })}
      </p>
      <p className={styles.keys}>
        {before}
        <Key>j</Key>
        {between}
        <Key>k</Key>
        {after}
        <Key>/</Key>
        {end}
      </p>
    </div>
  )
}

function ObserverRows({ observers, shownKey }: { observers: readonly ObserverRow[]; shownKey: string | null }) {
  const { words, format } = useWords()
  const own = words.people
  return (
    <ul className={styles.rows} data-testid="observers">
      {observers.slice(0, 300).map((one) => (
        <li key={one.gaugeId}>
          <Link
            href={`/people/${keyOf(one)}`}
            className={styles.entry ?? ''}
            aria-current={keyOf(one) === shownKey ? 'true' : undefined}
          >
            <span className={styles.name}>{one.name}</span>
            <code>{one.code}</code>
            <span className={styles.soft}>
              {one.gaugeName} ·{' '}
              {one.lastReadingOn === null
                ? own.noReading
                : fill(own.lastReading, { day: format.dayShort(one.lastReadingOn) })}
              {one.answeredShare === null ? '' : ` · ${format.percentTight(one.answeredShare)}`}
            </span>
          </Link>
        </li>
      ))}
    </ul>
  )
}
