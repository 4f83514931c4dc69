import type { ButtonHTMLAttributes, ReactNode } from 'react'
import styles from './Button.module.css'
import { Key } from './Key.tsx'

type Props = ButtonHTMLAttributes<HTMLButtonElement> & {
  look?: 'plain' | 'primary' | 'quiet' | 'icon'
  hint?: string | undefined
  children: ReactNode
}

export function Button({ look = 'plain', hint, children, className = '', ...rest }: Props) {
  return (
    <button type="button" {...rest} className={[styles.button, styles[look], className].filter(Boolean).join(' ')}>
      {children}
      {hint ? <Key>{hint}</Key> : null}
    </button>
  )
}
