/** What a person showed in drills, for their page at the desk. */
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query'
import { askRefresher, drillsQuery } from '../../api/drills.ts'
import { problemFrom } from '../../api/problemError.ts'
import { Button } from '../../ui/Button.tsx'
import { Notice } from '../../ui/Notice.tsx'
import { drillWords } from '../../words/drillWords.ts'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import styles from './DrillPage.module.css'

export function DrillPanel({ about }: { about: string }) {
  const { language, format } = useWords()
  const words = drillWords[language]
  const own = words.panel
  const client = useQueryClient()
  const drills = useQuery(drillsQuery(about))
  const ask = useMutation({
    mutationFn: askRefresher,
    onSuccess: (next) => client.setQueryData(drillsQuery(about).queryKey, next),
  })
  const error = drills.error ?? ask.error
  const last = drills.data?.sittings[0]
  return (
    <section className={styles.panel} aria-label={own.title}>
      <h3>{own.title}</h3>
      {error ? <Notice problem={problemFrom(error)} /> : null}
      {drills.data === undefined ? null : (
        <>
          <p>
            {last === undefined
              ? own.none
              : fill(own.last, {
                  share: format.percent(last.rightShare),
                  day: format.dayPlain(last.atUtc.slice(0, 10)),
                  passed: last.isPassed ? own.passed : own.failed,
                })}
            {last !== undefined && last.repeat.length > 0
              ? ` · ${fill(words.result.repeat, { skills: last.repeat.map((skill) => words.skills[skill]).join(', ') })}`
              : ''}
          </p>
          {drills.data.startingFactor === 1 ? null : (
            <p className={styles.soft}>{fill(own.odds, { factor: format.number(drills.data.startingFactor, 2) })}</p>
          )}
          <div className={styles.acts}>
            {drills.data.refresher === 'asked' ? (
              <p>{own.asked}</p>
            ) : (
              <Button onClick={() => ask.mutate(about)}>{own.ask}</Button>
            )}
            {drills.data.refresher === 'yearly' ? <p>{own.yearly}</p> : null}
            <a href="/people/drills/try">{own.tryIt}</a>
          </div>
        </>
      )}
    </section>
  )
}
