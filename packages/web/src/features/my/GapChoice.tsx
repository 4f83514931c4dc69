import { type EpochDay, isoFromEpochDay, type Language } from '@gaugewright/science'
import { fill } from '../../words/fill.ts'
import type { MyWords } from '../../words/myWords.ts'
import type { Span } from './entryDays.ts'
import styles from './MyPage.module.css'
import { sayDay } from './sayTime.ts'

type Props = {
  missed: number
  day: EpochDay
  span: Span
  mayBeEach: boolean
  language: Language
  words: MyWords
  onSpan: (span: Span) => void
}

/** Days were missed: is the amount of the last day, of all of them together, or was each of them dry? */
export function GapChoice({ missed, day, span, mayBeEach, language, words, onSpan }: Props) {
  const { report } = words
  const spans: Span[] = mayBeEach ? ['last', 'each', 'total'] : ['last', 'total']
  const since = sayDay(isoFromEpochDay(day - missed - 1), language)
  return (
    <fieldset className={styles.gap} data-testid="gap">
      <legend>{fill(report.gapTitle, { day: since })}</legend>
      {spans.map((one) => (
        <label key={one} className={styles.option}>
          <input type="radio" name="span" checked={span === one} onChange={() => onSpan(one)} />
          {fill(report.gap[one], { count: missed + 1 })}
        </label>
      ))}
    </fieldset>
  )
}
