import type { GaugeHabitsAnswer } from '@gaugewright/contract'
import type { Ref } from 'react'
import { Link } from 'wouter'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import styles from './GaugePanel.module.css'
import { HabitCard, UsualHabit } from './HabitCard.tsx'

type Props = { gauge: GaugeHabitsAnswer; headingRef: Ref<HTMLHeadingElement> }

/** One gauge: who and where, what its readings show, and what is as usual. */
export function GaugePanel({ gauge, headingRef }: Props) {
  const { words, format, language } = useWords()
  const own = words.gauges
  const told = gauge.habits.filter(({ isHabit }) => isHabit)
  const usual = gauge.habits.filter(({ isHabit }) => !isHabit)
  const said = gauge.network.language === language ? undefined : gauge.network.language
  return (
    <div className={styles.panel} data-testid="gauge" data-code={gauge.code}>
      <Link href="/gauges" className={styles.back ?? ''}>
        ← {own.back}
      </Link>
      <div className={styles.who}>
        <h2 ref={headingRef} tabIndex={-1} className={styles.name}>
          {gauge.name}
        </h2>
        <p className={styles.soft}>
          <code>{gauge.code}</code>
          {gauge.area ? ` · ${gauge.area}` : ''}
          {gauge.elevationM === null ? '' : ` · ${format.height(gauge.elevationM)}`}
          {gauge.observerName ? ` · ${fill(own.observer, { name: gauge.observerName })}` : ''} ·{' '}
          {fill(own.readings, { count: format.whole(gauge.readings) })}
        </p>
        <p>
          {/* A page of its own, not a screen of the desk. */}
          <a href={`/my/?gauge=${encodeURIComponent(gauge.code)}`} data-testid="observers-page">
            {own.observersPage}
          </a>{' '}
          · <Link href={`/gauges/${encodeURIComponent(gauge.code)}/site`}>{own.site}</Link>
        </p>
        {gauge.decided === null ? null : (
          <p className={styles.soft}>
            {fill(own.decided, {
              all: gauge.decided.mistaken + gauge.decided.standing,
              mistaken: gauge.decided.mistaken,
            })}
          </p>
        )}
        {gauge.allowedFor.sentence === null ? null : <p lang={said}>{gauge.allowedFor.sentence}</p>}
      </div>
      <section className={styles.cards} aria-label={own.told}>
        {told.length === 0 ? <p>{usual.length === 0 ? own.unknown : own.toldNone}</p> : null}
        {told.map((habit) => (
          <HabitCard key={habit.kind} habit={habit} gauge={gauge} />
        ))}
      </section>
      {usual.length === 0 ? null : (
        <section className={styles.usual}>
          <h3>{own.usual}</h3>
          {usual.map((habit) => (
            <UsualHabit key={habit.kind} habit={habit} gauge={gauge} />
          ))}
        </section>
      )}
    </div>
  )
}
