import { type LengthUnit, metresPer } from '@gaugewright/drawings'
import { useEffect, useId, useState } from 'react'
import styles from './SitePage.module.css'

type Props = {
  label: string
  /** Metres; null where nothing is given. */
  value: number | null
  unit: LengthUnit | '°' | 'mm' | 'm/s' | 'mph'
  onChange: (value: number) => void
  hint?: string
}

/** A number with its unit; typed with a point or a comma, told when it is none. What is typed is never rewritten under the hand. */
export function LengthField({ label, value, unit, onChange, hint }: Props) {
  const id = useId()
  const per = unit === 'm' || unit === 'ft' ? metresPer[unit] : 1
  const shown = value === null || !Number.isFinite(value) ? '' : String(Math.round((value / per) * 100) / 100)
  const [text, setText] = useState(shown)
  const [isBad, setIsBad] = useState(false)
  useEffect(() => {
    setText((typed) => (numberOf(typed) === Number(shown) && typed !== '' ? typed : shown))
    setIsBad(false)
  }, [shown])
  return (
    <div className={styles.field}>
      <label htmlFor={id}>{label}</label>
      <span className={styles.measure}>
        <input
          id={id}
          inputMode="decimal"
          value={text}
          aria-invalid={isBad}
          onChange={(event) => {
            setText(event.target.value)
            const typed = numberOf(event.target.value)
            setIsBad(!Number.isFinite(typed))
            if (Number.isFinite(typed)) onChange(typed * per)
          }}
        />
        <span>{unit}</span>
      </span>
      {isBad && hint ? (
        <span role="alert" className={styles.bad}>
          {hint}
        </span>
      ) : null}
    </div>
  )
}

function numberOf(text: string): number {
  const plain = text.trim().replace(',', '.')
  return plain === '' ? Number.NaN : Number(plain)
}
