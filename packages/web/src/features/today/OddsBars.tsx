import type { DayEvidence } from '@gaugewright/contract'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import { explanationsShown } from './explanationsShown.ts'
import styles from './OddsBars.module.css'

/** The odds of each explanation as bars, likeliest first. */
export function OddsBars({ evidence }: { evidence: DayEvidence }) {
  const { words, format } = useWords()
  const shown = explanationsShown(evidence.explanations)
  return (
    <ul className={styles.bars}>
      {shown.map((explanation) => {
        const { kind, odds, impliedMm, firstDay, lastDay } = explanation
        const amount = format.mm(impliedMm)
        const days =
          firstDay === lastDay ? format.dayShort(lastDay) : `${format.dayShort(firstDay)} – ${format.dayShort(lastDay)}`
        const otherDays = firstDay !== evidence.reading.firstDay || lastDay !== evidence.reading.lastDay
        return (
          <li key={`${kind}${impliedMm}${firstDay}`} title={explanation.sentence}>
            <span className={styles.name}>{words.explanations[kind]}</span>
            <span className={styles.track} aria-hidden="true">
              <span
                className={kind === 'stands' ? styles.stands : styles.mistake}
                style={{ width: `${Math.max(0.5, odds * 100)}%` }}
              />
            </span>
            <span className={styles.odds}>{format.percent(odds)}</span>
            <span className={styles.implied}>
              {kind === 'stands' || kind === 'other'
                ? null
                : otherDays
                  ? fill(words.oddsImpliesDays, { amount, days })
                  : fill(words.oddsImplies, { amount })}
            </span>
          </li>
        )
      })}
    </ul>
  )
}
