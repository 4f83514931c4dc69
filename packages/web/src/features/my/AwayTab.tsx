import type { MyGauge } from '@gaugewright/contract'
import type { Language } from '@gaugewright/science'
import { type FormEvent, useState } from 'react'
import { announceAbsence } from '../../api/my/myQueries.ts'
import { problemFrom } from '../../api/problemError.ts'
import { fill } from '../../words/fill.ts'
import type { MyWords } from '../../words/myWords.ts'
import styles from './MyPage.module.css'
import { sayDay } from './sayTime.ts'

type Props = { gauge: MyGauge; language: Language; words: MyWords; onChanged: () => void }

/** Says ahead that nobody will read; the answer lists what is announced. */
export function AwayTab({ gauge, language, words, onChanged }: Props) {
  const own = words.away
  const [absences, setAbsences] = useState(gauge.absences)
  const [first, setFirst] = useState('')
  const [last, setLast] = useState('')
  const [told, setTold] = useState('')
  async function onSubmit(event: FormEvent): Promise<void> {
    event.preventDefault()
    try {
      const answer = await announceAbsence({ gauge: gauge.gauge.code, firstDay: first, lastDay: last })
      setAbsences(answer.absences)
      setTold(own.saved)
      onChanged()
    } catch (error) {
      const problem = problemFrom(error)
      setTold(problem.code === 'DESK_UNREACHABLE' ? own.needsSignal : `${problem.seen}. ${problem.advice}`)
    }
  }
  return (
    <section className={styles.card} aria-labelledby="away-heading">
      <h2 id="away-heading">{own.heading}</h2>
      <p>{own.why}</p>
      <form className={styles.stack} onSubmit={(event) => void onSubmit(event)}>
        <label className={styles.field}>
          <span>{own.first}</span>
          <input
            type="date"
            required
            className={styles.input}
            value={first}
            onChange={(change) => setFirst(change.target.value)}
          />
        </label>
        <label className={styles.field}>
          <span>{own.last}</span>
          <input
            type="date"
            required
            min={first}
            className={styles.input}
            value={last}
            onChange={(change) => setLast(change.target.value)}
          />
        </label>
        <button type="submit" className={styles.send}>
          {own.save}
        </button>
      </form>
      <p role="status" data-testid="away-told">
        {told}
      </p>
      <h3>{own.list}</h3>
      {absences.length === 0 ? <p>{own.none}</p> : null}
      <ul className={styles.list} data-testid="absences">
        {absences.map(({ firstDay, lastDay }) => (
          <li key={`${firstDay} ${lastDay}`} className={styles.item}>
            {fill(own.span, { first: sayDay(firstDay, language), last: sayDay(lastDay, language) })}
          </li>
        ))}
      </ul>
    </section>
  )
}
