import { useState } from 'react'
import { useWords } from '../words/WordsContext.tsx'
import styles from './PasswordField.module.css'

type Props = {
  label: string
  value: string
  onChange: (value: string) => void
  autoComplete: 'current-password' | 'new-password'
  name?: string
  isInvalid?: boolean
  describedBy?: string
}

/** A password, unseen unless it is asked to be shown; password managers may fill it, and it may be pasted. */
export function PasswordField({ label, value, onChange, autoComplete, name, isInvalid = false, describedBy }: Props) {
  const { words } = useWords()
  const [isShown, setShown] = useState(false)
  return (
    <div className={styles.field}>
      <label>
        {label}
        <input
          name={name}
          type={isShown ? 'text' : 'password'}
          autoComplete={autoComplete}
          autoCapitalize="none"
          spellCheck={false}
          maxLength={128}
          value={value}
          aria-invalid={isInvalid}
          aria-describedby={describedBy}
          onChange={(event) => onChange(event.target.value)}
        />
      </label>
      <label className={styles.show}>
        <input type="checkbox" checked={isShown} onChange={(event) => setShown(event.target.checked)} />
        {words.access.showPassword}
      </label>
    </div>
  )
}
