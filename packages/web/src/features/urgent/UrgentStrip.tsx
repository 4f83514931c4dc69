import { useQuery } from '@tanstack/react-query'
import { Link } from 'wouter'
import { urgentQuery } from '../../api/urgent.ts'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import styles from './UrgentStrip.module.css'
import { placeText, whatText } from './urgentView.ts'

/** Above another screen while something urgent is new: what the weightiest is, and the way to it. */
export function UrgentStrip() {
  const own = useWords()
  const say = own.words.urgent
  const { data } = useQuery(urgentQuery)
  const fresh = data?.items.filter(({ state }) => state === 'new') ?? []
  const [first] = fresh
  return (
    <div role="status" className={styles.place}>
      {first === undefined ? null : (
        <p className={styles.strip} data-testid="urgent-strip">
          <span>
            {fill(fresh.length === 1 ? say.stripOne : say.stripMore, {
              count: data?.newCount ?? fresh.length,
              what: fill(say.whatAt, { what: whatText(first.report.seen, own), place: placeText(first, own) }),
            })}
          </span>
          <Link href={`/urgent/${encodeURIComponent(first.report.id)}`}>{say.stripOpen}</Link>
        </p>
      )}
    </div>
  )
}
