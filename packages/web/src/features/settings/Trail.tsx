import type { AuditEntry } from '@gaugewright/contract'
import { problemFrom } from '../../api/problemError.ts'
import { Button } from '../../ui/Button.tsx'
import { Notice } from '../../ui/Notice.tsx'
import type { Words } from '../../words/messages.ts'
import { useWords } from '../../words/WordsContext.tsx'
import styles from './Trail.module.css'
import type { AccessDesk } from './useAccess.ts'

/** Who did what, newest first, with older entries on demand. */
export function Trail({ desk }: { desk: AccessDesk }) {
  const { words, format } = useWords()
  const { access: own } = words
  const { trail } = desk
  const entries = trail.data?.pages.flatMap((page) => page.entries) ?? []
  const nameOf = new Map(desk.people.data?.people.map(({ id, name }) => [id, name]))
  return (
    <div>
      <h3>{own.trail}</h3>
      <p className={styles.soft}>{own.trailIntro}</p>
      {trail.error ? <Notice problem={problemFrom(trail.error)} onRetry={() => void trail.refetch()} /> : null}
      {trail.data && entries.length === 0 ? <p>{own.trailEmpty}</p> : null}
      <ol className={styles.trail} data-testid="trail">
        {entries.map((entry) => (
          <li key={entry.id}>
            <time dateTime={entry.atUtc}>{format.instant(entry.atUtc)}</time>
            <span>
              <b>{whoOf(entry, own)}</b> {actOf(entry, own)}
              {entry.result === 'refused' ? <em> ({own.trailRefused})</em> : null}
              {entry.door === 'desk' ? null : <span className={styles.soft}> {own.doors[entry.door]}</span>}
            </span>
            <code>{nameOf.get(entry.subject ?? '') ?? entry.subject ?? ''}</code>
          </li>
        ))}
      </ol>
      {trail.hasNextPage ? <Button onClick={() => void trail.fetchNextPage()}>{own.trailOlder}</Button> : null}
    </div>
  )
}

function whoOf({ name, personId }: AuditEntry, own: Words['access']): string {
  return name ?? (personId === null ? own.nobodyKnown : own.forgottenPerson)
}

/** Acts of newer parts of the desk show their own name. */
function actOf({ act }: AuditEntry, own: Words['access']): string {
  return own.acts[act as keyof typeof own.acts] ?? act
}
