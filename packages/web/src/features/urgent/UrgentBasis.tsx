import type { UrgentNow } from '@gaugewright/contract'
import type { LineState } from '../../api/urgentLine.ts'
import { Key } from '../../ui/Key.tsx'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import styles from './UrgentPage.module.css'
import { newCountText, stretchText } from './urgentView.ts'

const keys: Record<string, string> = { next: 'j', previous: 'k', seen: 's', pass: 'p', close: 'c', undo: 'u' }

/** Above the list: whether the line lives, how many are new, how long things took, and what keeps people safe. */
export function UrgentBasis({ now, line }: { now: UrgentNow; line: LineState }) {
  const own = useWords()
  const say = own.words.urgent
  const { toDesk, toSeen, toPassedOn } = now.medianSeconds
  const { emergencyNumber } = now.settings
  return (
    <div className={styles.basis}>
      <p className={styles.state}>
        <span className={styles.line} data-line={line} role="status" title={say.lineTitle}>
          {say.line[line]}
        </span>
        <b data-testid="new-count">{newCountText(now.newCount, own)}</b>
        {toDesk === null ? null : (
          <span className={styles.soft} data-testid="medians">
            {fill(say.medians, {
              desk: stretchText(toDesk, own),
              seen: stretchText(toSeen, own),
              passedOn: stretchText(toPassedOn, own),
            })}
          </span>
        )}
      </p>
      <p className={styles.safety}>
        <strong>{say.safetyTitle}</strong> {say.safety}{' '}
        {emergencyNumber === null ? say.emergencyUnset : fill(say.emergency, { number: emergencyNumber })}
      </p>
      <p className={`${styles.soft} ${styles.keys}`}>
        {say.keysHint
          .split(/(\{\w+\})/)
          .map((part) => (part.startsWith('{') ? <Key key={part}>{keys[part.slice(1, -1)] ?? part}</Key> : part))}
      </p>
    </div>
  )
}
