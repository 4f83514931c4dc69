import type { RuleSetting } from '@gaugewright/contract'
import { Button } from '../../ui/Button.tsx'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import styles from './RuleHistory.module.css'

type Props = { history: readonly RuleSetting[]; onTakeUp: (setting: RuleSetting, why: string) => void }

/** Every setting there was, newest first, each with who, when and why; an old one can be taken up again. */
export function RuleHistory({ history, onTakeUp }: Props) {
  const { words, format } = useWords()
  const { rule: own } = words
  return (
    <div className={styles.history}>
      <h3>{own.historyHeading}</h3>
      <ol data-testid="rule-history">
        {history.map((setting, i) => {
          const what =
            setting.letStandAt === null
              ? own.historyNone
              : fill(own.historyRule, { odds: format.odds(setting.letStandAt) })
          const time = format.instant(setting.setAtUtc)
          return (
            <li key={setting.id}>
              <div>
                <b>{what}</b>{' '}
                <span>{fill(own.historyBy, { time, who: setting.by || words.access.forgottenPerson })}</span>
                <q>{setting.why}</q>
              </div>
              {i === 0 || setting.letStandAt === history[0]?.letStandAt ? null : (
                <Button
                  aria-label={fill(own.againLabel, { setting: `${what}, ${time}` })}
                  onClick={() => onTakeUp(setting, fill(own.againWhy, { time }))}
                >
                  {own.again}
                </Button>
              )}
            </li>
          )
        })}
      </ol>
    </div>
  )
}
