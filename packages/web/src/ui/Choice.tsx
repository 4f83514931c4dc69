import { useId } from 'react'
import styles from './Choice.module.css'

type Props<Value extends string> = {
  label: string
  labelHidden?: boolean
  value: Value
  options: readonly { value: Value; label: string; disabled?: boolean }[]
  onChange: (value: Value) => void
}

/** One of a few: native radio buttons drawn as one strip. */
export function Choice<Value extends string>({ label, labelHidden = false, value, options, onChange }: Props<Value>) {
  const name = useId()
  return (
    <fieldset className={styles.choice}>
      <legend className={labelHidden ? 'sr-only' : styles.legend}>{label}</legend>
      <div className={styles.strip}>
        {options.map((option) => (
          <label key={option.value} className={styles.option}>
            <input
              type="radio"
              name={name}
              value={option.value}
              checked={option.value === value}
              disabled={option.disabled}
              onChange={() => onChange(option.value)}
            />
            <span>{option.label}</span>
          </label>
        ))}
      </div>
    </fieldset>
  )
}
