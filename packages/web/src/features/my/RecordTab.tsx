import type { MyGauge, MyReading } from '@gaugewright/contract'
import type { Language, Unit } from '@gaugewright/science'
import { leafUrl } from '../../api/leafUrl.ts'
import { fill } from '../../words/fill.ts'
import type { MyWords } from '../../words/myWords.ts'
import styles from './MyPage.module.css'
import { RecordView } from './RecordView.tsx'
import { sayMoment } from './sayTime.ts'
import { useRecord } from './useRecord.ts'

type Props = {
  gauge: MyGauge
  unit: Unit
  language: Language
  words: MyWords
  renewed: number
  onCorrect: (reading: MyReading) => void
}

export function RecordTab({ gauge, unit, language, words, renewed, onCorrect }: Props) {
  const { record, keptAtUtc } = useRecord(gauge.gauge.code, renewed)
  if (record === null) return <p className={styles.card}>{words.record.noneYet}</p>
  return (
    <>
      {keptAtUtc === null ? null : (
        <p className={styles.hint}>{fill(words.record.offline, { when: sayMoment(keptAtUtc, language) })}</p>
      )}
      <RecordView
        record={record}
        readings={gauge.readings}
        unit={unit}
        language={language}
        words={words}
        onCorrect={onCorrect}
      />
      <p className={styles.card}>
        <a href={leafUrl(gauge.gauge.code, lastMonth(new Date()))} target="_blank" rel="noreferrer">
          {words.record.leaf}
        </a>
      </p>
    </>
  )
}

/** The month before this one, `2026-05`. */
function lastMonth(now: Date): string {
  return new Date(Date.UTC(now.getFullYear(), now.getMonth() - 1, 1)).toISOString().slice(0, 7)
}
