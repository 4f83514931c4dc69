/** Offers, grouped by state; the age in it drawn against what is usual, and said. */
import { type Candidate, usualStateDays } from '@gaugewright/contract'
import { Link } from 'wouter'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import styles from './PeoplePage.module.css'
import { keyOf, offersByState, wholeDays } from './peopleView.ts'

export function OfferRows({ candidates, shownKey }: { candidates: readonly Candidate[]; shownKey: string | null }) {
  const { words } = useWords()
  return (
    <div data-testid="offers">
      {offersByState(candidates).map(({ state, candidates: group }) => (
        <section key={state} aria-label={words.people.state[state]}>
          <h2 className={styles.state}>
            {words.people.state[state]} <span>{group.length}</span>
          </h2>
          <ul className={styles.rows}>
            {group.map((one) => (
              <li key={one.id}>
                <Link
                  href={`/people/${keyOf(one)}`}
                  className={styles.entry ?? ''}
                  aria-current={keyOf(one) === shownKey ? 'true' : undefined}
                >
                  <span className={styles.name}>{one.offer.name}</span>
                  <Age candidate={one} />
                  <span className={styles.soft}>{one.offer.place}</span>
                </Link>
              </li>
            ))}
          </ul>
        </section>
      ))}
    </div>
  )
}

const BAR_PX = 64

export function Age({ candidate }: { candidate: Candidate }) {
  const { words } = useWords()
  const own = words.people
  const { state, ageDays, isOverdue } = candidate
  const usual = usualStateDays[state]
  const days = wholeDays(ageDays)
  const age = days === 0 ? own.ageToday : fill(own.age, { count: days })
  const scale = usual === null ? 0 : BAR_PX / (2 * usual)
  return (
    <span className={styles.age} data-overdue={isOverdue}>
      {usual === null ? null : (
        <svg width={BAR_PX} height="10" aria-hidden="true">
          <rect x="0" y="3" width={BAR_PX} height="4" fill="var(--line)" />
          <rect
            x="0"
            y="1"
            width={Math.min(BAR_PX, ageDays * scale)}
            height="8"
            fill={isOverdue ? 'var(--doubt)' : 'var(--accent)'}
          />
          <path d={`M${BAR_PX / 2},0v10`} stroke="var(--ink)" strokeWidth="1.5" />
        </svg>
      )}
      <span>
        {age}
        {isOverdue ? ` · ▲ ${own.waits}` : ''}
      </span>
      {usual === null ? null : (
        <span className="sr-only">{fill(own.ageBar, { age, usual: fill(own.age, { count: usual }) })}</span>
      )}
    </span>
  )
}
