import type { UrgentItem } from '@gaugewright/contract'
import { useEffect, useRef } from 'react'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import { KindMark } from './KindMark.tsx'
import styles from './UrgentList.module.css'
import { agoText, placeText, whatText } from './urgentView.ts'

type Props = {
  items: readonly UrgentItem[]
  hiddenCount: number
  shownId: string | null
  nowMs: number
  onGo: (id: string) => void
}

/** Every report in a few words, the weightiest first. */
export function UrgentList({ items, hiddenCount, shownId, nowMs, onGo }: Props) {
  const own = useWords()
  const { words, format } = own
  const shown = useRef<HTMLButtonElement>(null)
  // biome-ignore lint/correctness/useExhaustiveDependencies: brings the chosen one into view when another is chosen
  useEffect(() => {
    shown.current?.scrollIntoView({ block: 'nearest' })
  }, [shownId])
  return (
    <section className={styles.list} aria-label={words.urgent.listTitle}>
      {items.length === 0 ? <p className={styles.none}>{words.urgent.none}</p> : null}
      <ol data-testid="urgent-list">
        {items.map((item) => {
          const { report, severity, state } = item
          const isShown = report.id === shownId
          return (
            <li key={report.id} data-report={report.id} data-state={state}>
              <button
                type="button"
                ref={isShown ? shown : null}
                className={styles.entry}
                aria-current={isShown ? 'true' : undefined}
                onClick={() => onGo(report.id)}
              >
                <KindMark kind={report.seen.kind} level={severity.level} />
                <span className={styles.text}>
                  <span className={styles.what}>{whatText(report.seen, own)}</span>
                  <span className={styles.where}>{placeText(item, own)}</span>
                  <span className={styles.tags}>
                    <span className={styles.level} data-level={severity.level}>
                      {words.urgent.levels[severity.level]}
                    </span>
                    <span className={styles.state} data-state={state}>
                      {words.urgent.states[state]}
                    </span>
                    <span>{agoText(report.seenAtUtc, nowMs, own)}</span>
                    <span>{fill(words.urgent.listOdds, { percent: format.percentTight(item.plausibility.odds) })}</span>
                  </span>
                </span>
              </button>
            </li>
          )
        })}
      </ol>
      {hiddenCount > 0 ? <p className={styles.none}>{fill(words.urgent.hidden, { count: hiddenCount })}</p> : null}
    </section>
  )
}
