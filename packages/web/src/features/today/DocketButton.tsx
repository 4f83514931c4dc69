import { type CSSProperties, type ReactNode, useEffect, useRef } from 'react'
import { useWords } from '../../words/WordsContext.tsx'
import styles from './DocketList.module.css'

type Props = {
  row: { gaugeId: string; name: string; code: string; area: string | null; text: string }
  isChosen: boolean
  /** Height of the weight's mark, 0…1; 0 for rows that wait for nothing. */
  weightShare: number
  onChoose: (gaugeId: string) => void
  children: ReactNode
}

/** One row of the docket. The chosen one keeps in sight, and takes the focus with it when the focus is in the docket. */
export function DocketButton({ row, isChosen, weightShare, onChoose, children }: Props) {
  const { words } = useWords()
  const button = useRef<HTMLButtonElement>(null)
  useEffect(() => {
    const element = button.current
    if (!isChosen || !element) return
    element.scrollIntoView({ block: 'nearest' })
    const active = document.activeElement
    if (active !== element && element.closest('[data-testid=docket]')?.contains(active))
      element.focus({ preventScroll: true })
  }, [isChosen])
  return (
    <li>
      <button
        ref={button}
        type="button"
        className={`${styles.row} ${weightShare > 0 ? '' : styles.settled}`}
        aria-current={isChosen ? 'true' : undefined}
        onClick={() => onChoose(row.gaugeId)}
      >
        <span className={styles.weight} style={{ '--share': weightShare } as CSSProperties} aria-hidden="true" />
        <span className={styles.who}>
          <strong>{row.name}</strong>
          <small>
            <code>{row.code}</code> {row.area}
          </small>
        </span>
        <span className={styles.typed}>
          <span className="sr-only">{words.typed} </span>
          <q>{row.text}</q>
        </span>
        {children}
      </button>
    </li>
  )
}
