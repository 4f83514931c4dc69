import { type ReactNode, useEffect, useId, useRef } from 'react'
import { Button } from './Button.tsx'
import styles from './Dialog.module.css'

type Props = { title: string; closeLabel: string; onClose: () => void; children: ReactNode; wide?: boolean }

/** A modal dialog on the platform's own <dialog>: it keeps focus inside, closes on Esc and gives focus back. */
export function Dialog({ title, closeLabel, onClose, children, wide = false }: Props) {
  const dialog = useRef<HTMLDialogElement>(null)
  const titleId = useId()
  useEffect(() => {
    const shown = dialog.current
    const before = document.activeElement
    if (shown && !shown.open) shown.showModal()
    return () => {
      shown?.close()
      if (before instanceof HTMLElement && before.isConnected) before.focus({ preventScroll: true })
    }
  }, [])
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: a click on the backdrop closes; Esc does the same by onCancel
    <dialog
      ref={dialog}
      className={`${styles.dialog} ${wide ? styles.wide : ''}`}
      aria-labelledby={titleId}
      onCancel={(event) => {
        event.preventDefault()
        onClose()
      }}
      onClick={(event) => {
        if (event.target === dialog.current) onClose()
      }}
    >
      <div className={styles.body}>
        <header className={styles.head}>
          <h2 id={titleId}>{title}</h2>
          <Button look="icon" onClick={onClose} aria-label={closeLabel}>
            ×
          </Button>
        </header>
        {children}
      </div>
    </dialog>
  )
}
