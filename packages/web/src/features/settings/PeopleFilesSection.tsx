import type { DuplicatePeople, ImportedPeople } from '@gaugewright/contract'
import { routes } from '@gaugewright/contract'
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query'
import { type ChangeEvent, useState } from 'react'
import { duplicatesQuery, importPeople } from '../../api/peopleFiles.ts'
import { problemFrom } from '../../api/problemError.ts'
import { Button } from '../../ui/Button.tsx'
import { Notice } from '../../ui/Notice.tsx'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import styles from './PeopleSections.module.css'

/** Observers as files, in and out; and who may be there twice. */
export function PeopleFilesSection() {
  const { words } = useWords()
  const own = words.people.files
  const client = useQueryClient()
  const duplicates = useQuery(duplicatesQuery)
  const [file, setFile] = useState<{ format: 'csv' | 'vcard'; text: string } | null>(null)
  const take = useMutation({ mutationFn: importPeople, onSuccess: () => void client.invalidateQueries() })
  const choose = async (event: ChangeEvent<HTMLInputElement>) => {
    const chosen = event.target.files?.[0]
    event.target.value = ''
    if (chosen === undefined) return
    const next = {
      format: /\.(vcf|vcard)$/i.test(chosen.name) ? ('vcard' as const) : ('csv' as const),
      text: await chosen.text(),
    }
    setFile(next)
    take.mutate({ ...next, keepGood: false })
  }
  return (
    <section className={styles.section} aria-labelledby="people-files">
      <h2 id="people-files">{own.title}</h2>
      <p>{own.intro}</p>
      <label className={styles.inline}>
        {own.choose}
        <input type="file" accept=".csv,.vcf,.vcard,text/csv,text/vcard" onChange={(event) => void choose(event)} />
      </label>
      {take.error ? <Notice problem={problemFrom(take.error)} /> : null}
      {take.data === undefined ? null : (
        <Imported done={take.data} onGood={file === null ? null : () => take.mutate({ ...file, keepGood: true })} />
      )}
      <p className={styles.acts}>
        <a href={`${routes.exportPeople.path}?format=csv`} download>
          {own.csv}
        </a>
        <a href={`${routes.exportPeople.path}?format=vcard`} download>
          {own.vcard}
        </a>
      </p>
      {duplicates.data === undefined ? null : <Pairs pairs={duplicates.data.pairs} />}
    </section>
  )
}

function Imported({ done, onGood }: { done: ImportedPeople; onGood: (() => void) | null }) {
  const { words } = useWords()
  const own = words.people.files
  const isWhole = done.refused.length === 0 || done.added + done.changed + done.same > 0
  return (
    <div role="status">
      <p>{isWhole ? fill(own.done, { added: done.added, changed: done.changed, same: done.same }) : own.nothing}</p>
      {done.refused.length === 0 ? null : (
        <>
          <ul className={styles.versions}>
            {done.refused.slice(0, 50).map(({ line, seen, advice }) => (
              <li key={`${line} ${seen}`}>
                {fill(own.line, { line })} {seen}. {advice}
              </li>
            ))}
          </ul>
          {onGood === null || isWhole ? null : <Button onClick={onGood}>{own.keepGood}</Button>}
        </>
      )}
    </div>
  )
}

function Pairs({ pairs }: { pairs: DuplicatePeople['pairs'] }) {
  const { words } = useWords()
  const own = words.people.files
  return (
    <div>
      <h3>{own.duplicates}</h3>
      {pairs.length === 0 ? <p>{own.noDuplicates}</p> : null}
      <ul className={styles.versions}>
        {pairs.map(({ a, b, reasons }) => (
          <li key={`${a.about} ${b.about}`}>
            {a.name} · {b.name}: {reasons.map((reason) => own.reasons[reason]).join(', ')}
          </li>
        ))}
      </ul>
    </div>
  )
}
