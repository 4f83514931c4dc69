import { useCallback } from 'react'
import { problemFrom } from '../../api/problemError.ts'
import { Notice } from '../../ui/Notice.tsx'
import { ScreenHeader } from '../../ui/ScreenHeader.tsx'
import { useWords } from '../../words/WordsContext.tsx'
import { MorningView } from './MorningView.tsx'
import styles from './TodayPage.module.css'
import type { TodayProps } from './todayProps.ts'
import { useDay } from './useDay.ts'

/** Today: the morning of one observing day, or why it cannot be shown. */
export function TodayPage(props: TodayProps) {
  const day = useDay(props.dayAsked)
  const { words } = useWords()
  const retry = useCallback(() => void day.review.refetch(), [day.review.refetch])
  if (day.review.data) return <MorningView {...props} day={day} review={day.review.data} />
  return (
    <div className={styles.page}>
      <ScreenHeader networkName="" tools={props.tools}>
        <h1 className="sr-only">{words.today}</h1>
      </ScreenHeader>
      <main className={styles.waiting}>
        {day.review.error ? (
          <Notice problem={problemFrom(day.review.error)} onRetry={retry} />
        ) : (
          <p role="status">{words.loading}</p>
        )}
      </main>
    </div>
  )
}
