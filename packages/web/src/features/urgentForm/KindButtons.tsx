import { type UrgentKind, urgentKinds } from '@gaugewright/contract'
import { useFormInUse } from './FormContext.tsx'
import styles from './form.module.css'

/** The first of two touches. */
export function KindButtons({ onKind }: { onKind: (kind: UrgentKind) => void }) {
  const { words, unit } = useFormInUse()
  const hints = unit === 'mm' ? { ...words.kindHints, ...words.kindHintsMm } : words.kindHints
  return (
    <ul className={styles.list}>
      {urgentKinds.map((kind) => (
        <li key={kind}>
          <button type="button" className={`${styles.tile} ${styles.wide}`} onClick={() => onKind(kind)}>
            <strong>{words.kinds[kind]}</strong>
            <small>{hints[kind]}</small>
          </button>
        </li>
      ))}
    </ul>
  )
}
