import type { WireDecision } from '@gaugewright/contract'
import { letStandAtOfRule } from '@gaugewright/science'
import { Button } from '../../ui/Button.tsx'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import styles from './DecisionHistory.module.css'
import { decisionInForce } from './decisionInForce.ts'

type Props = { decisions: readonly WireDecision[]; onTakeBack: (decision: WireDecision) => void }

/** Every decision on a reading, newest first, undone ones too, each with its reason. What a rule decided can be taken back. */
export function DecisionHistory({ decisions, onTakeBack }: Props) {
  const { words, format } = useWords()
  const { rule: own } = words
  const inForce = decisionInForce(decisions)
  const who = ({ by }: WireDecision) => {
    if (by.kind === 'person') return by.name || words.access.forgottenPerson
    const letStandAt = letStandAtOfRule(by.rule)
    return letStandAt === null ? own.byNoRule : fill(own.byRule, { odds: format.odds(letStandAt) })
  }
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
          {d.reason ? <q>{d.reason}</q> : null}
          {d === inForce && d.by.kind === 'rule' ? (
            <div className={styles.back}>
              <Button onClick={() => onTakeBack(d)}>{own.takeBack}</Button> <span>{own.takeBackNote}</span>
            </div>
          ) : null}
        </li>
      ))}
    </ol>
  )
}
