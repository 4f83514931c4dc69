import type { AnnouncedAbsence, MyGauge } from '@gaugewright/contract'
import type { Language } from '@gaugewright/science'
import { type FormEvent, useRef, useState } from 'react'
import { announceAbsence, withdrawAbsence } from '../../api/my/myQueries.ts'
import { problemFrom } from '../../api/problemError.ts'
import { fill } from '../../words/fill.ts'
import type { MyWords } from '../../words/myWords.ts'
import styles from './MyPage.module.css'
import { sayProblem } from './sayProblem.ts'
import { sayDay } from './sayTime.ts'

type Props = { gauge: MyGauge; language: Language; words: MyWords; onChanged: () => void }

/** Says ahead that nobody will read, or that somebody will after all; the answer lists what is announced. */
export function AwayTab({ gauge, language, words, onChanged }: Props) {
  const own = words.away
  const [absences, setAbsences] = useState(gauge.absences)
  const [first, setFirst] = useState('')
  const [last, setLast] = useState('')
  const [told, setTold] = useState('')
  const status = useRef<HTMLParagraphElement>(null)
  const { code } = gauge.gauge
  async function tell(asked: Promise<AnnouncedAbsence>, done: string): Promise<void> {
    try {
      setAbsences((await asked).absences)
      setTold(done)
      onChanged()
    } catch (error) {
      const problem = problemFrom(error)
      setTold(problem.code === 'DESK_UNREACHABLE' ? own.needsSignal : sayProblem(problem, words))
    }
  }
  function onSubmit(event: FormEvent): void {
    event.preventDefault()
    void tell(announceAbsence({ gauge: code, firstDay: first, lastDay: last }), own.saved)
  }
  async function onWithdraw(absence: string): Promise<void> {
    await tell(withdrawAbsence({ gauge: code, absence }), own.withdrawn)
    // The button that was pressed is gone: the eye and the reader go on at what was done.
    status.current?.focus()
  }
  const spanOf = ({ firstDay, lastDay }: { firstDay: string; lastDay: string }) =>
    fill(own.span, { first: sayDay(firstDay, language), last: sayDay(lastDay, language) })
  return (
    <section className={styles.card} aria-labelledby="away-heading">
      <h2 id="away-heading">{own.heading}</h2>
      <p>{own.why}</p>
      <form className={styles.stack} onSubmit={onSubmit}>
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
      <p role="status" data-testid="away-told" ref={status} tabIndex={-1}>
        {told}
      </p>
      <h3>{own.list}</h3>
      {absences.length === 0 ? <p>{own.none}</p> : null}
      <ul className={styles.list} data-testid="absences">
        {absences.map((absence) => (
          <li key={absence.id} className={styles.item}>
            <span className={styles.grow}>{spanOf(absence)}</span>
            <button
              type="button"
              className={styles.button}
              aria-label={fill(own.withdrawOf, { span: spanOf(absence) })}
              onClick={() => void onWithdraw(absence.id)}
            >
              {own.withdraw}
            </button>
          </li>
        ))}
      </ul>
    </section>
  )
}
