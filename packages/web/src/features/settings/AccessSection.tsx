import { problemFrom } from '../../api/problemError.ts'
import { Notice } from '../../ui/Notice.tsx'
import { useWords } from '../../words/WordsContext.tsx'
import styles from './AccessSection.module.css'
import { AddPersonForm } from './AddPersonForm.tsx'
import { PeopleTable } from './PeopleTable.tsx'
import { Trail } from './Trail.tsx'
import { useAccess } from './useAccess.ts'

/** People and access: who may come in, what each may do, and who changed what. */
export function AccessSection() {
  const { words } = useWords()
  const { access: own } = words
  const desk = useAccess()
  if (!desk.isShown) return null
  const error = desk.people.error ?? desk.role.error
  return (
    <section className={styles.section} aria-labelledby="access-heading">
      <div>
        <h2 id="access-heading">{own.heading}</h2>
        <p className={styles.soft}>{own.headingIntro}</p>
        {desk.isOpen ? <p className={styles.open}>{own.isOpen}</p> : null}
      </div>
      {error ? <Notice problem={problemFrom(error)} onRetry={() => void desk.people.refetch()} /> : null}
      <div>
        <h3>{own.people}</h3>
        {desk.people.data ? <PeopleTable desk={desk} people={desk.people.data.people} /> : null}
      </div>
      <AddPersonForm desk={desk} />
      <Trail desk={desk} />
    </section>
  )
}
