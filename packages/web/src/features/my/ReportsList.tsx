import type { Language } from '@gaugewright/science'
import type { KeptReport } from '../../api/my/phoneStore.ts'
import { fill } from '../../words/fill.ts'
import type { MyWords } from '../../words/myWords.ts'
import styles from './MyPage.module.css'
import { sayProblem } from './sayProblem.ts'
import { sayDay, sayMoment } from './sayTime.ts'

type Props = {
  reports: readonly KeptReport[]
  language: Language
  words: MyWords
  onDrop: (seq: number) => void
  onAgain: (report: KeptReport) => void
  onTry: () => void
}

const marks = { waiting: '◷', received: '✓', refused: '!' } as const

/** Each report of this phone with its state: on this phone, received, or in need of a look. The newest first. */
export function ReportsList({ reports, language, words, onDrop, onAgain, onTry }: Props) {
  const own = words.reports
  const waiting = reports.filter(({ state }) => state === 'waiting').length
  return (
    <section className={styles.card} aria-labelledby="reports-heading">
      <h2 id="reports-heading">{own.heading}</h2>
      <p role="status" data-testid="waiting" data-count={waiting}>
        {reports.length === 0
          ? own.none
          : waiting === 0
            ? own.allReceived
            : waiting === 1
              ? own.waitingCount.one
              : fill(own.waitingCount.many, { count: waiting })}
      </p>
      {waiting === 0 ? null : (
        <button type="button" className={styles.button} onClick={onTry}>
          {own.trySend}
        </button>
      )}
      <ul className={styles.list}>
        {[...reports].reverse().map((report) => (
          <li key={report.seq} className={styles.item} data-state={report.state} data-testid="report">
            <span className={styles.mark} aria-hidden="true">
              {marks[report.state]}
            </span>
            <div className={styles.grow}>
              <p>
                <strong>{sayText(report, words)}</strong> · {sayDay(report.readings.at(-1)?.lastDay ?? '', language)}
              </p>
              <p className={styles.note}>{sayState(report, language, words)}</p>
              {report.problem === null ? null : (
                <p className={styles.note}>
                  {sayProblem(report.problem, words)} <code>{report.problem.code}</code>
                </p>
              )}
            </div>
            {report.state === 'refused' ? (
              <div className={styles.acts}>
                <button type="button" className={styles.button} onClick={() => onAgain(report)}>
                  {own.again}
                </button>
                <button
                  type="button"
                  className={styles.button}
                  onClick={() => {
                    if (confirm(own.dropSure)) onDrop(report.seq)
                  }}
                >
                  {own.drop}
                </button>
              </div>
            ) : null}
          </li>
        ))}
      </ul>
    </section>
  )
}

function sayText({ readings }: KeptReport, words: MyWords): string {
  const last = readings.at(-1)
  if (readings.length > 1) return fill(words.reports.dryDays, { count: readings.length })
  if (last === undefined) return ''
  if (last.text === 'T') return words.traceWord
  return last.text === '0' ? words.nothingWord : `${last.text} ${last.unit}`
}

function sayState({ state, receivedAtUtc }: KeptReport, language: Language, words: MyWords): string {
  const own = words.reports
  if (state === 'waiting') return own.waiting
  if (state === 'refused') return own.refused
  return fill(own.received, { time: receivedAtUtc === null ? '' : sayMoment(receivedAtUtc, language) })
}
