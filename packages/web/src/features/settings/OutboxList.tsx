import type { OutboxAnswer, OutgoingRow, SettleOutgoingAsk } from '@gaugewright/contract'
import { problemFrom } from '../../api/problemError.ts'
import { Button } from '../../ui/Button.tsx'
import { Notice } from '../../ui/Notice.tsx'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import styles from './OutgoingSection.module.css'
import { purposeOf, recipientOf } from './outgoingView.ts'
import type { OutgoingDesk } from './useOutgoing.ts'

/** Messages that need somebody, the newest first: what waits, failed or is in doubt, and what may be done about each. */
export function OutboxList({ desk, outbox }: { desk: OutgoingDesk; outbox: OutboxAnswer }) {
  const { words } = useWords()
  const { outgoing: own } = words
  const { lastDiscarded } = desk
  const { sent = 0, discarded = 0 } = outbox.counts
  const settle = (row: OutgoingRow, act: SettleOutgoingAsk['act']) =>
    desk.settle.mutate({ id: row.id, act, by: 'coordinator' })
  return (
    <div data-testid="outbox">
      <h3>{own.outbox}</h3>
      <p className={styles.soft}>{fill(own.counts, { sent, discarded })}</p>
      {desk.settle.error ? (
        <Notice problem={problemFrom(desk.settle.error)} onDismiss={() => desk.settle.reset()} />
      ) : null}
      <div role="status">
        {lastDiscarded ? (
          <p>
            {fill(own.discarded, { what: purposeOf(lastDiscarded, own), who: recipientOf(lastDiscarded, own) })}{' '}
            <Button onClick={() => settle(lastDiscarded, 'restore')}>{own.acts.restore}</Button>
          </p>
        ) : null}
      </div>
      {outbox.rows.length === 0 ? (
        <p>{own.outboxEmpty}</p>
      ) : (
        <ul className={styles.list}>
          {outbox.rows.map((row) => (
            <Row key={row.id} row={row} onAct={(act) => settle(row, act)} />
          ))}
        </ul>
      )}
    </div>
  )
}

function Row({ row, onAct }: { row: OutgoingRow; onAct: (act: SettleOutgoingAsk['act']) => void }) {
  const { words, format } = useWords()
  const { outgoing: own } = words
  const what = purposeOf(row, own)
  const who = recipientOf(row, own)
  const tries = row.attempts === 0 ? '' : ` · ${fill(own.tries, { count: row.attempts })}`
  return (
    <li>
      <div>
        <b>{what}</b> {who}{' '}
        <span className={styles.state} data-state={row.state}>
          {own.states[row.state]}
        </span>
        <p>
          {format.instant(row.queuedAtUtc)}
          {tries}
          {row.lastError === null ? '' : ` · ${row.lastError}`}
        </p>
        {row.state === 'in doubt' ? <p>{own.doubtHint}</p> : null}
      </div>
      <div className={styles.acts}>
        {row.may.map((act) => (
          <Button
            key={act}
            aria-label={fill(own.actLabel, { act: own.acts[act], what, who })}
            onClick={() => onAct(act)}
          >
            {own.acts[act]}
          </Button>
        ))}
      </div>
    </li>
  )
}
