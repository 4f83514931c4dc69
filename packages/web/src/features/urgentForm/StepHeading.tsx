import { useEffect, useRef } from 'react'
import styles from './form.module.css'

/** Heading of a step. It takes the focus, so that a screen reader begins where the step does. */
export function StepHeading({ children }: { children: string }) {
  const heading = useRef<HTMLHeadingElement>(null)
  useEffect(() => heading.current?.focus({ preventScroll: true }), [])
  return (
    <h2 ref={heading} tabIndex={-1} className={styles.heading}>
      {children}
    </h2>
  )
}
