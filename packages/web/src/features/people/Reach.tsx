import { useState } from 'react'
import { Button } from '../../ui/Button.tsx'
import { useWords } from '../../words/WordsContext.tsx'
import styles from './PeoplePage.module.css'

/** Mail address and telephone, each to be copied. */
export function Reach({ mail, phone }: { mail: string | null; phone: string | null }) {
  const { words } = useWords()
  const own = words.people
  const [copied, setCopied] = useState<string | null>(null)
  const line = (label: string, value: string | null) => (
    <>
      <dt>{label}</dt>
      <dd>
        {value ?? own.nothing}{' '}
        {value === null ? null : (
          <Button
            look="quiet"
            onClick={() => void navigator.clipboard.writeText(value).then(() => setCopied(value))}
            aria-label={`${own.copy}: ${value}`}
          >
            {copied === value ? own.copied : own.copy}
          </Button>
        )}
      </dd>
    </>
  )
  return (
    <dl className={styles.facts} aria-label={own.reach}>
      {line(own.mail, mail)}
      {line(own.phone, phone)}
    </dl>
  )
}
