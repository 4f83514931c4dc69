import type { ReactNode } from 'react'
import styles from './AccessForms.module.css'

/** A control with its label above it. */
export function LabelledField({ label, children }: { label: string; children: ReactNode }) {
  return (
    <div className={styles.field}>
      {/* biome-ignore lint/a11y/noLabelWithoutControl: the control is what stands inside */}
      <label>
        {label}
        {children}
      </label>
    </div>
  )
}
