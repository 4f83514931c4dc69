import type { Language } from '@gaugewright/science'
import { isoFromEpochDay } from '@gaugewright/science'
import { useId, useState } from 'react'
import { fill } from '../../words/fill.ts'
import type { MyWords } from '../../words/myWords.ts'
import type { EntryDay } from './entryDays.ts'
import styles from './MyPage.module.css'
import { sayDay, sayTime } from './sayTime.ts'

type Props = {
  readAt: Date | null
  now: Date
  placed: EntryDay
  language: Language
  words: MyWords
  onReadAt: (readAt: Date | null) => void
}

/** When the gauge was read: now, or a time of one's own; and the day that it counts for. */
export function WhenFields({ readAt, now, placed, language, words, onReadAt }: Props) {
  const id = useId()
  const [isOpen, setOpen] = useState(readAt !== null)
  const { report } = words
  const day = sayDay(isoFromEpochDay(placed.day), language)
  return (
    <div className={styles.when}>
      {isOpen ? (
        <div className={styles.row}>
          <label htmlFor={id}>{report.when}</label>
          <input
            id={id}
            type="datetime-local"
            className={styles.input}
            value={localText(readAt ?? now)}
            max={localText(now)}
            onChange={(change) => {
              const time = new Date(change.target.value)
              if (!Number.isNaN(time.getTime())) onReadAt(time)
            }}
          />
          <button
            type="button"
            className={styles.button}
            onClick={() => {
              onReadAt(null)
              setOpen(false)
            }}
          >
            {report.now}
          </button>
        </div>
      ) : (
        <div className={styles.row}>
          <span>
            {report.when} <strong>{sayTime(now, language)}</strong>
          </span>
          <button type="button" className={styles.button} onClick={() => setOpen(true)}>
            {report.change}
          </button>
        </div>
      )}
      <p className={styles.note} data-testid="counts-for" data-day={isoFromEpochDay(placed.day)}>
        {placed.timing === 'off hour' ? fill(report.whenOff, { day }) : fill(report.whenDay, { day })}
        {placed.timing === 'early' || placed.timing === 'late' ? ` ${report.whenEarlyLate}` : ''}
      </p>
    </div>
  )
}

/** What a field for local time holds: the clock on the wall, to the minute. */
function localText(time: Date): string {
  const shifted = new Date(time.getTime() - time.getTimezoneOffset() * 60_000)
  return shifted.toISOString().slice(0, 16)
}
