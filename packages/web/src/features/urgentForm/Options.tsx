import { useId } from 'react'
import styles from './form.module.css'

interface OneProps<Value extends string> {
  label: string
  options: readonly { value: Value; label: string }[]
  value: Value | null
  onChange: (value: Value) => void
}

/** One of a few, as large buttons: native radio buttons. */
export function OneOf<Value extends string>({ label, options, value, onChange }: OneProps<Value>) {
  const name = useId()
  return (
    <fieldset className={styles.group}>
      <legend>{label}</legend>
      <div className={styles.options}>
        {options.map((option) => (
          <label key={option.value} className={styles.option}>
            <input type="radio" name={name} checked={option.value === value} onChange={() => onChange(option.value)} />
            <span>{option.label}</span>
          </label>
        ))}
      </div>
    </fieldset>
  )
}

interface SomeProps<Value extends string> {
  label: string
  options: readonly { value: Value; label: string }[]
  values: readonly Value[]
  onChange: (values: Value[]) => void
}

/** Any of a few: native check boxes. */
export function SomeOf<Value extends string>({ label, options, values, onChange }: SomeProps<Value>) {
  const toggle = (value: Value) =>
    onChange(values.includes(value) ? values.filter((one) => one !== value) : [...values, value])
  return (
    <fieldset className={styles.group}>
      <legend>{label}</legend>
      <div className={styles.options}>
        {options.map((option) => (
          <label key={option.value} className={styles.option}>
            <input type="checkbox" checked={values.includes(option.value)} onChange={() => toggle(option.value)} />
            <span>{option.label}</span>
          </label>
        ))}
      </div>
    </fieldset>
  )
}

interface YesNoProps {
  label: string
  value: boolean | null
  onChange: (value: boolean | null) => void
  words: { yes: string; no: string; unsaid: string }
}

/** Yes, no, or not known, which is neither. */
export function YesNo({ label, value, onChange, words }: YesNoProps) {
  return (
    <OneOf
      label={label}
      value={value === null ? 'unsaid' : value ? 'yes' : 'no'}
      options={[
        { value: 'yes', label: words.yes },
        { value: 'no', label: words.no },
        { value: 'unsaid', label: words.unsaid },
      ]}
      onChange={(answer) => onChange(answer === 'unsaid' ? null : answer === 'yes')}
    />
  )
}
