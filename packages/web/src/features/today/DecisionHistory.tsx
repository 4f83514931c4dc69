import type { WireDecision } from '@gaugewright/contract'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import styles from './DecisionHistory.module.css'

/** Every decision on a reading, newest first, undone ones too, each with its reason. */
export function DecisionHistory({ decisions }: { decisions: readonly WireDecision[] }) {
  const { words, format } = useWords()
  const who = (d: WireDecision) => (d.by.kind === 'person' ? d.by.name : fill(words.historyRule, { rule: d.by.rule }))
  return (
    <ol className={styles.history}>
      {[...decisions].reverse().map((d) => (
        <li key={d.id}>
          {fill(d.undoes ? words.historyUndone : words.historyBy, {
            verdict: d.amended
              ? fill(words.verdictTo, { amount: format.amount(d.amended.amountUm, d.amended.isTrace) })
              : words.verdicts[d.verdict],
            who: who(d),
            time: format.instant(d.decidedAtUtc),
          })}
          {d.reason && !d.undoes ? <q>{d.reason}</q> : null}
        </li>
      ))}
    </ol>
  )
}
