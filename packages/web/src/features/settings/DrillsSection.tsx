import type { DrillsDue } from '@gaugewright/contract'
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import { drillsDueQuery, setDrills } from '../../api/drills.ts'
import { problemFrom } from '../../api/problemError.ts'
import { Button } from '../../ui/Button.tsx'
import { Notice } from '../../ui/Notice.tsx'
import { drillWords } from '../../words/drillWords.ts'
import { useWords } from '../../words/WordsContext.tsx'
import styles from './PeopleSections.module.css'

/** The pass mark of the drills. */
export function DrillsSection() {
  const { words, language } = useWords()
  const own = drillWords[language].panel
  const due = useQuery(drillsDueQuery)
  return (
    <section className={styles.section} aria-labelledby="drills">
      <h2 id="drills">{own.settings}</h2>
      <p>{own.intro}</p>
      {due.data ? (
        <MarkForm due={due.data} />
      ) : due.error ? (
        <Notice problem={problemFrom(due.error)} onRetry={() => void due.refetch()} />
      ) : (
        <p role="status">{words.loading}</p>
      )}
      <p>
        <a href="/people/drills/try">{own.tryIt}</a>
      </p>
    </section>
  )
}

function MarkForm({ due }: { due: DrillsDue }) {
  const { language } = useWords()
  const own = drillWords[language].panel
  const client = useQueryClient()
  const [mark, setMark] = useState(String(Math.round(due.settings.passMark * 100)))
  const [isRequired, setRequired] = useState(due.settings.isRequired)
  const set = useMutation({
    mutationFn: setDrills,
    onSuccess: (next) => client.setQueryData(drillsDueQuery.queryKey, next),
  })
  return (
    <form
      className={styles.form}
      onSubmit={(event) => {
        event.preventDefault()
        set.mutate({ passMark: Number(mark) / 100, isRequired })
      }}
    >
      <label>
        {own.mark}
        <input type="number" min={50} max={100} value={mark} onChange={(event) => setMark(event.target.value)} />
      </label>
      <label className={styles.check}>
        <input type="checkbox" checked={isRequired} onChange={(event) => setRequired(event.target.checked)} />
        {own.required}
      </label>
      {set.error ? <Notice problem={problemFrom(set.error)} /> : null}
      <div className={styles.acts}>
        <Button type="submit" look="primary">
          {own.save}
        </Button>
        <span role="status">{set.isSuccess ? own.saved : ''}</span>
      </div>
    </form>
  )
}
