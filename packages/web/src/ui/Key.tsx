import styles from './Key.module.css'

/** A key of the keyboard, drawn small, letters as they stand on it; hidden from assistive technology, which reads aria-keyshortcuts instead. */
export function Key({ children }: { children: string }) {
  return (
    <kbd className={styles.key} aria-hidden="true">
      {children.length === 1 ? children.toUpperCase() : children}
    </kbd>
  )
}
