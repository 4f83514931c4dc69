import { useId } from 'react'
import { useFormInUse } from './FormContext.tsx'
import styles from './form.module.css'

interface Props {
  /** `HH:MM`, or empty. */
  began: string
  ended: string
  onBegan: (text: string) => void
  onEnded: (text: string) => void
  isEndShown: boolean
}

export function TimesField({ began, ended, onBegan, onEnded, isEndShown }: Props) {
  const { words } = useFormInUse()
  const ids = { began: useId(), ended: useId() }
  return (
    <div className={styles.pair}>
      <div className={styles.field}>
        <label className={styles.label} htmlFor={ids.began}>
          {words.began}
        </label>
        <input id={ids.began} type="time" value={began} onChange={(event) => onBegan(event.target.value)} />
      </div>
      {isEndShown ? (
        <div className={styles.field}>
          <label className={styles.label} htmlFor={ids.ended}>
            {words.ended}
          </label>
          <input id={ids.ended} type="time" value={ended} onChange={(event) => onEnded(event.target.value)} />
        </div>
      ) : null}
    </div>
  )
}
