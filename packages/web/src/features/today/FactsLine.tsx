import type { DayReview } from '@gaugewright/contract'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import styles from './FactsLine.module.css'
import type { RollFilter } from './rollView.ts'

type Props = {
  review: DayReview
  onDocket: () => void
  onRoll: (filter: RollFilter) => void
  onGauge: (gaugeId: string) => void
}

/** The day in one line; each count leads to its rows. */
export function FactsLine({ review, onDocket, onRoll, onGauge }: Props) {
  const { words, format } = useWords()
  const { facts } = review
  const largest = review.roll.find((row) => row.name === facts.largestGauge && row.acceptedUm === facts.largestUm)
  const counts: { filter: RollFilter; count: number; text: string }[] = [
    { filter: 'read late', count: facts.late, text: words.factLate },
    { filter: 'multi-day open', count: facts.multiDayOpen, text: words.factOpen },
    { filter: 'silent', count: facts.silent, text: words.factSilent },
    { filter: 'away', count: facts.away, text: words.factAway },
  ]
  return (
    <section className={styles.facts} aria-label={words.factsLabel}>
      <button type="button" className={styles.fact} onClick={() => onRoll('all')}>
        <b>{facts.read + facts.late}</b> {fill(words.factIn, { expected: facts.expected })}
      </button>
      {counts.map(({ filter, count, text }) =>
        count > 0 ? (
          <button key={filter} type="button" className={styles.fact} onClick={() => onRoll(filter)}>
            <b>{count}</b> {text} <span className="sr-only">({words.showInRoll})</span>
          </button>
        ) : null,
      )}
      <button type="button" className={`${styles.fact} ${facts.toDecide > 0 ? styles.open : ''}`} onClick={onDocket}>
        <b data-testid="to-decide">{facts.toDecide}</b> {words.factToDecide}
      </button>
      <span className={styles.plain}>
        <b>{facts.wet}</b> {words.factWet}
      </span>
      {facts.largestUm === null ? null : (
        <button type="button" className={styles.fact} onClick={() => largest && onGauge(largest.gaugeId)}>
          {words.factLargest} <b>{format.um(facts.largestUm)}</b>{' '}
          {facts.largestGauge ? fill(words.factLargestAt, { gauge: facts.largestGauge }) : null}
        </button>
      )}
    </section>
  )
}
