/** One who reads a gauge: how to reach them, their gauge and site, contacts, letters; and what other features know. */
import type { ObserverRow } from '@gaugewright/contract'
import { type ReactNode, useState } from 'react'
import { Link } from 'wouter'
import { useSingleKeys } from '../../hooks/useSingleKeys.ts'
import { Button } from '../../ui/Button.tsx'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import { ContactLog } from './ContactLog.tsx'
import { LetterDialog } from './LetterDialog.tsx'
import styles from './PeoplePage.module.css'
import { Reach } from './Reach.tsx'

export function ObserverPanel({ observer, more }: { observer: ObserverRow; more?: ReactNode }) {
  const { words, format } = useWords()
  const own = words.people
  const { personId, name, code, gaugeName, lastReadingOn, answeredShare } = observer
  const about = personId === null ? null : `person ${personId}`
  const [isWriting, setIsWriting] = useState(false)
  useSingleKeys({ w: () => about !== null && setIsWriting(true) })
  return (
    <div className={styles.person} data-testid="observer">
      <Link href="/people" className={styles.back ?? ''}>
        ← {own.back}
      </Link>
      <header>
        <h2>{name}</h2>
        <p>
          <Link href={`/gauges/${code}`}>
            {gaugeName} ({code})
          </Link>{' '}
          · {lastReadingOn === null ? own.noReading : fill(own.lastReading, { day: format.dayPlain(lastReadingOn) })}
          {answeredShare === null ? '' : ` · ${fill(own.answeredShare, { share: format.percent(answeredShare) })}`}
        </p>
      </header>
      <div className={styles.acts}>
        {about === null ? null : (
          <Button hint="w" onClick={() => setIsWriting(true)}>
            {own.write}
          </Button>
        )}
        <Link href={`/gauges/${code}/site`}>{own.site}</Link>
      </div>
      {about === null ? (
        <p className={styles.soft}>
          {own.noPerson} <Link href="/settings">{words.screens.settings}</Link>
        </p>
      ) : (
        <Reach mail={observer.mail} phone={observer.phone} />
      )}
      {more}
      {about === null ? null : <ContactLog about={about} />}
      {isWriting && about !== null ? (
        <LetterDialog about={about} step="thanks" onClose={() => setIsWriting(false)} />
      ) : null}
    </div>
  )
}
