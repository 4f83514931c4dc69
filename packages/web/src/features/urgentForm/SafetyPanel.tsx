import { useFormInUse } from './FormContext.tsx'
import styles from './form.module.css'

/** What comes before any report: how not to get hurt, and whom to call. */
export function SafetyPanel() {
  const { words } = useFormInUse()
  return (
    <section className={styles.safety} aria-labelledby="safety">
      <h2 id="safety">{words.safetyTitle}</h2>
      <ul>
        {words.safety.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      <EmergencyLine />
      <p>{words.notWatched}</p>
    </section>
  )
}

export function EmergencyLine() {
  const { words, form } = useFormInUse()
  if (form.emergencyNumber === null) return <p className={styles.call}>{words.emergencyUnset}</p>
  return (
    <p className={styles.call}>
      {words.emergency} <a href={`tel:${form.emergencyNumber.replace(/[^+\d*#]/g, '')}`}>{form.emergencyNumber}</a>
    </p>
  )
}
