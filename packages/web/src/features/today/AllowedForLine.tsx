import type { DayEvidence } from '@gaugewright/contract'
import { Link } from 'wouter'
import { useWords } from '../../words/WordsContext.tsx'
import styles from './AllowedForLine.module.css'

/** What the odds already allow for at this gauge, such as dates a day late; with the way to its habits. */
export function AllowedForLine({ evidence }: { evidence: DayEvidence }) {
  const { words } = useWords()
  if (evidence.allowedFor === null) return null
  return (
    <p className={styles.line} data-testid="allowed-for">
      {evidence.allowedFor}{' '}
      <Link href={`/gauges/${encodeURIComponent(evidence.code)}`}>{words.gauges.evidenceLink}</Link>
    </p>
  )
}
