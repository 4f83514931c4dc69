import type { OfferPageSettings } from '@gaugewright/contract'
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import { offerPageQuery, setOfferPage } from '../../api/people.ts'
import { problemFrom } from '../../api/problemError.ts'
import { Button } from '../../ui/Button.tsx'
import { Notice } from '../../ui/Notice.tsx'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import styles from './PeopleSections.module.css'

/** The public page on which people offer to observe: its words, and whether it takes offers. */
export function OfferPageSection() {
  const { words } = useWords()
  const own = words.people.page
  const page = useQuery(offerPageQuery)
  return (
    <section className={styles.section} aria-labelledby="offer-page">
      <h2 id="offer-page">{own.title}</h2>
      <p>{own.intro}</p>
      {page.data ? (
        <PageForm page={page.data} />
      ) : page.error ? (
        <Notice problem={problemFrom(page.error)} onRetry={() => void page.refetch()} />
      ) : (
        <p role="status">{words.loading}</p>
      )}
    </section>
  )
}

function PageForm({ page }: { page: OfferPageSettings }) {
  const { words, format } = useWords()
  const own = words.people.page
  const client = useQueryClient()
  const [isOpen, setOpen] = useState(page.isOpen)
  const [en, setEn] = useState(page.en)
  const [es, setEs] = useState(page.es)
  const [keepMonths, setKeep] = useState(String(page.keepMonths))
  const set = useMutation({
    mutationFn: setOfferPage,
    onSuccess: (next) => client.setQueryData(offerPageQuery.queryKey, next),
  })
  const last = page.versions.at(-1)
  return (
    <form
      className={styles.form}
      onSubmit={(event) => {
        event.preventDefault()
        set.mutate({ isOpen, en, es, keepMonths: Number(keepMonths) })
      }}
    >
      <label className={styles.check}>
        <input type="checkbox" checked={isOpen} onChange={(event) => setOpen(event.target.checked)} />
        {own.open}
      </label>
      <p>
        {own.address}: <a href="/offer">{`${location.origin}/offer`}</a>
      </p>
      <label>
        {own.en}
        <textarea lang="en" rows={7} maxLength={4000} value={en} onChange={(event) => setEn(event.target.value)} />
      </label>
      <label>
        {own.es}
        <textarea lang="es" rows={7} maxLength={4000} value={es} onChange={(event) => setEs(event.target.value)} />
      </label>
      <label>
        {own.keep}
        <input type="number" min={1} max={120} value={keepMonths} onChange={(event) => setKeep(event.target.value)} />
      </label>
      {set.error ? <Notice problem={problemFrom(set.error)} /> : null}
      <div className={styles.acts}>
        <Button type="submit" look="primary" disabled={set.isPending}>
          {own.save}
        </Button>
        <span role="status">{set.isSuccess ? own.saved : ''}</span>
        {last === undefined ? null : (
          <span className={styles.soft}>
            {fill(last.by ? own.lastBy : own.last, { when: format.instant(last.atUtc), by: last.by })}
          </span>
        )}
      </div>
    </form>
  )
}
