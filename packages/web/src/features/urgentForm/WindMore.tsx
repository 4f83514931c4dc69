import { useId, useState } from 'react'
import { fill } from '../../words/fill.ts'
import { useFormInUse } from './FormContext.tsx'
import styles from './form.module.css'
import type { MoreProps } from './moreDraft.ts'
import { OneOf } from './Options.tsx'
import { typedNumber } from './typedRate.ts'
import { mpsPerUnit, type SeenOf, speedUnitOf } from './urgentDraft.ts'
import { writeNumber } from './writeNumber.ts'

const leastMps = 1
const mostMps = 150

/** The strongest gust, where somebody can tell it. */
export function WindMore({ seen, onSeen }: MoreProps<SeenOf<'wind'>>) {
  const { words, unit, language } = useFormInUse()
  const speedUnit = speedUnitOf(unit)
  const id = useId()
  const [text, setText] = useState(() =>
    seen.gustMps ? writeNumber(seen.gustMps / mpsPerUnit[speedUnit], 0, language) : '',
  )
  const mpsOf = (typed: string) => {
    const value = typedNumber(typed)
    const mps = value === null ? null : value * mpsPerUnit[speedUnit]
    return mps !== null && mps >= leastMps && mps <= mostMps ? mps : null
  }
  const type = (next: string) => {
    setText(next)
    const gustMps = mpsOf(next)
    onSeen({ ...seen, gustMps, by: gustMps === null ? null : (seen.by ?? 'estimated') })
  }
  const shown = (mps: number) => writeNumber(Math.round(mps / mpsPerUnit[speedUnit]), 0, language)
  return (
    <>
      <div className={styles.field}>
        <label className={styles.label} htmlFor={id}>
          {fill(words.gust, { unit: speedUnit })}
        </label>
        <input
          id={id}
          inputMode="decimal"
          autoComplete="off"
          value={text}
          onChange={(event) => type(event.target.value)}
        />
        {text !== '' && mpsOf(text) === null ? (
          <p className={styles.trouble}>{fill(words.gustUnreadable, { low: shown(leastMps), high: shown(mostMps) })}</p>
        ) : null}
      </div>
      {seen.gustMps ? (
        <OneOf
          label={words.howMeasured}
          value={seen.by ?? null}
          options={(['measured', 'estimated'] as const).map((by) => ({ value: by, label: words.gustBy[by] }))}
          onChange={(by) => onSeen({ ...seen, by })}
        />
      ) : null}
    </>
  )
}
