/** How one gauge was answered over the last year, as a calendar; streaks, hours; and the page of their rain. */
import { useMutation, useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { rollQuery, sendLeaf } from '../../api/holding.ts'
import { leafUrl } from '../../api/leafUrl.ts'
import { problemFrom } from '../../api/problemError.ts'
import { Button } from '../../ui/Button.tsx'
import { Notice } from '../../ui/Notice.tsx'
import { fill } from '../../words/fill.ts'
import { holdingWords } from '../../words/holdingWords.ts'
import { useWords } from '../../words/WordsContext.tsx'
import styles from './Holding.module.css'
import { monthBefore } from './HoldingLists.tsx'

export function RollPanel({ code, maySend }: { code: string; maySend: boolean }) {
  const { format, language } = useWords()
  const own = holdingWords[language]
  const roll = useQuery(rollQuery(code))
  if (roll.error) return <Notice problem={problemFrom(roll.error)} />
  if (roll.data === undefined) return null
  const { strip, answeredShare, currentStreak, longestStreak, longestGap, hour, lastDay } = roll.data
  const time = (minutes: number) =>
    `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(Math.round(minutes % 60)).padStart(2, '0')}`
  return (
    <section className={styles.roll} aria-label={own.roll}>
      <h3>{own.roll}</h3>
      {answeredShare === null ? null : (
        <p>{fill(own.share, { share: format.percent(answeredShare), now: currentStreak, most: longestStreak })}</p>
      )}
      <Calendar strip={strip} label={own.calendar} />
      <p className={styles.soft}>{own.key}</p>
      {longestGap === null ? null : (
        <p className={styles.soft}>
          {fill(own.gap, { days: longestGap.days, day: format.dayPlain(longestGap.firstDay) })}
        </p>
      )}
      {hour === null ? null : (
        <p className={styles.soft}>
          {fill(own.hour, { median: time(hour.medianMin), low: time(hour.lowMin), high: time(hour.highMin) })}
        </p>
      )}
      <LeafForm code={code} lastDay={lastDay} maySend={maySend} />
    </section>
  )
}

const CELL = 10

function Calendar({ strip, label }: { strip: string; label: string }) {
  const weeks = Math.ceil(strip.length / 7)
  return (
    <svg
      role="img"
      aria-label={label}
      viewBox={`0 0 ${weeks * CELL} ${7 * CELL}`}
      width={weeks * CELL}
      height={7 * CELL}
      className={styles.calendar}
    >
      {[...strip].map((state, at) => {
        const [x, y] = [Math.floor(at / 7) * CELL, (at % 7) * CELL]
        const key = `${at} ${state}`
        if (state === 'a')
          return <rect key={key} x={x + 1} y={y + 1} width={CELL - 2} height={CELL - 2} fill="var(--accent)" />
        if (state === 'c')
          return (
            <rect key={key} x={x + 1} y={y + CELL / 2} width={CELL - 2} height={CELL / 2 - 1} fill="var(--accent)" />
          )
        if (state === 'w')
          return <circle key={key} cx={x + CELL / 2} cy={y + CELL / 2} r={2.6} fill="none" stroke="var(--ink-soft)" />
        if (state === 's')
          return (
            <rect
              key={key}
              x={x + 1.5}
              y={y + 1.5}
              width={CELL - 3}
              height={CELL - 3}
              fill="none"
              stroke="var(--line-strong)"
            />
          )
        return null
      })}
    </svg>
  )
}

function LeafForm({ code, lastDay, maySend }: { code: string; lastDay: string; maySend: boolean }) {
  const { language } = useWords()
  const own = holdingWords[language]
  const [period, setPeriod] = useState(monthBefore(lastDay))
  const send = useMutation({ mutationFn: sendLeaf })
  return (
    <div className={styles.acts}>
      <label className={styles.inline}>
        {own.leaf}: {own.month}
        <input
          value={period}
          maxLength={7}
          pattern="\d{4}(-(0[1-9]|1[0-2]))?"
          onChange={(event) => setPeriod(event.target.value)}
        />
      </label>
      <a href={leafUrl(code, period)} target="_blank" rel="noreferrer">
        {own.open}
      </a>
      {maySend ? <Button onClick={() => send.mutate({ gauge: code, period })}>{own.send}</Button> : null}
      <span role="status">{send.isSuccess ? own.leafSent : ''}</span>
      {send.error ? <Notice problem={problemFrom(send.error)} /> : null}
    </div>
  )
}
