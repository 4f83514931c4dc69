import type { Problem } from '@gaugewright/contract'
import { fill } from '../words/fill.ts'
import { useWords } from '../words/WordsContext.tsx'
import { Button } from './Button.tsx'
import styles from './Notice.module.css'

type Props = { problem: Problem; note?: string; onRetry?: () => void; onDismiss?: () => void }

/** A problem as the desk tells it: what was seen, what to do; with a way to try again. Announced at once. */
export function Notice({ problem, note, onRetry, onDismiss }: Props) {
  const { words } = useWords()
  const own = words.problems[problem.code as keyof typeof words.problems]
  const seen = own ? fill(own.seen, { seen: problem.seen }) : problem.seen
  return (
    <div className={styles.notice} role="alert">
      <div className={styles.text}>
        <p className={styles.title}>
          {words.problemTitle} <code>{problem.code}</code>
        </p>
        <p>{seen}</p>
        <p>{own?.advice ?? problem.advice}</p>
        {note ? <p>{note}</p> : null}
      </div>
      <div className={styles.acts}>
        {onRetry ? <Button onClick={onRetry}>{words.problemRetry}</Button> : null}
        {onDismiss ? (
          <Button look="quiet" onClick={onDismiss}>
            {words.problemDismiss}
          </Button>
        ) : null}
      </div>
    </div>
  )
}
