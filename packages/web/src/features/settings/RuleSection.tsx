import type { Rule } from '@gaugewright/contract'
import { problemFrom } from '../../api/problemError.ts'
import { Notice } from '../../ui/Notice.tsx'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import { RuleForm } from './RuleForm.tsx'
import { RuleHistory } from './RuleHistory.tsx'
import { RulePreviewPane } from './RulePreviewPane.tsx'
import styles from './RuleSection.module.css'
import type { RuleDesk } from './useRule.ts'

/** The rule that decides alone: what is in force, what is being chosen and what that would do, and what was set before. */
export function RuleSection({ desk, rule }: { desk: RuleDesk; rule: Rule }) {
  const { words, format } = useWords()
  const { rule: own } = words
  const [latest] = rule.history
  return (
    <section className={styles.section} aria-labelledby="rule-heading">
      <div className={styles.head}>
        <h2 id="rule-heading">{own.heading}</h2>
        <p className={styles.soft}>{own.intro}</p>
        <p className={styles.force} data-testid="in-force">
          <span className={styles.tag}>{own.inForce}</span>{' '}
          <b>
            {rule.letStandAt === null ? own.inForceNone : fill(own.inForceRule, { odds: format.odds(rule.letStandAt) })}
          </b>{' '}
          <span className={styles.soft}>
            {latest
              ? fill(own.since, {
                  time: format.instant(latest.setAtUtc),
                  who: latest.by || words.access.forgottenPerson,
                })
              : own.never}
          </span>
        </p>
      </div>
      <RuleForm desk={desk} />
      <RulePreviewPane desk={desk} />
      <div className={styles.wide}>
        {desk.setError ? <Notice problem={problemFrom(desk.setError)} onRetry={desk.set} /> : null}
      </div>
      {rule.history.length > 0 ? <RuleHistory history={rule.history} onTakeUp={desk.takeUp} /> : null}
    </section>
  )
}
