import styles from './Key.module.css'

/** A key of the keyboard, drawn small; hidden from assistive technology, which reads aria-keyshortcuts instead. */
export function Key({ children }: { children: string }) {
  return (
    <kbd className={styles.key} aria-hidden="true">
      {children}
    </kbd>
  )
}
