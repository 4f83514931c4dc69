import type { MyWords } from '../../words/myWords.ts'
import type { EntryKind } from './formTrouble.ts'
import styles from './MyPage.module.css'

type Props = { kind: EntryKind | null; words: MyWords; onKind: (kind: EntryKind) => void }

const kinds = ['nothing', 'trace', 'amount'] as const

/** Three answers of equal size: a zero is as good an answer as any. */
export function KindButtons({ kind, words, onKind }: Props) {
  const { report } = words
  return (
    <fieldset className={styles.kinds}>
      <legend className="sr-only">{report.heading}</legend>
      {kinds.map((one) => (
        <label key={one} className={styles.kind}>
          <input type="radio" name="kind" value={one} checked={kind === one} onChange={() => onKind(one)} />
          <span className={styles.kindName}>{report.kinds[one]}</span>
          <span className={styles.kindNote}>{report.kindNotes[one]}</span>
        </label>
      ))}
    </fieldset>
  )
}
