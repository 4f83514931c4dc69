import type { DayReview } from '@gaugewright/contract'
import type { ReactNode } from 'react'
import { Button } from '../../ui/Button.tsx'
import { ScreenHeader } from '../../ui/ScreenHeader.tsx'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import styles from './DayHeader.module.css'

type Props = { review: DayReview; onDay: (day: string) => void; onHelp: () => void; tools: ReactNode }

export function DayHeader({ review, onDay, onHelp, tools }: Props) {
  const { words, format } = useWords()
  const { network, day, previousDay, nextDay, firstDay, lastDay } = review
  return (
    <ScreenHeader
      networkName={network.name}
      tools={
        <>
          <Button
            className={styles.keys ?? ''}
            look="icon"
            aria-label={words.keysOpen}
            aria-keyshortcuts="?"
            onClick={onHelp}
          >
            ?
          </Button>
          {tools}
        </>
      }
    >
      <div className={styles.day}>
        <Button
          look="icon"
          aria-label={words.previousDay}
          aria-keyshortcuts="["
          disabled={!previousDay}
          onClick={() => previousDay && onDay(previousDay)}
        >
          ‹
        </Button>
        <div className={styles.date}>
          <h1>
            <span className="sr-only">{words.today}: </span>
            <span className={styles.long}>{format.dayLong(day)}</span>
            <span className={styles.short} aria-hidden="true">
              {format.dayShort(day)}
            </span>
          </h1>
          <p className={styles.note}>
            {fill(words.observingDayNote, { time: network.readingTime, zone: format.zone(day) })}
          </p>
        </div>
        <Button
          look="icon"
          aria-label={words.nextDay}
          aria-keyshortcuts="]"
          disabled={!nextDay}
          onClick={() => nextDay && onDay(nextDay)}
        >
          ›
        </Button>
        <label className={styles.picker}>
          <span className="sr-only">{words.pickDay}</span>
          <input
            key={day}
            type="date"
            defaultValue={day}
            min={firstDay}
            max={lastDay}
            onChange={(event) => {
              const picked = event.target.value
              if (picked >= firstDay && picked <= lastDay) onDay(picked)
            }}
          />
        </label>
        {day === lastDay ? null : (
          <Button look="quiet" onClick={() => onDay(lastDay)} aria-keyshortcuts="t">
            {words.latestDay}
          </Button>
        )}
      </div>
    </ScreenHeader>
  )
}
