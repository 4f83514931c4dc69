import type { KeyMade } from '@gaugewright/contract'
import { useEffect, useRef, useState } from 'react'
import { Button } from '../../ui/Button.tsx'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import forms from './AccessForms.module.css'
import styles from './KeysSection.module.css'

/** A key that was just made, to be copied; chosen whole where the browser lets nothing be copied. */
export function ShownKey({ made, onSeen }: { made: KeyMade; onSeen: () => void }) {
  const { words } = useWords()
  const { senderKeys: own } = words
  const [isCopied, setCopied] = useState(false)
  const field = useRef<HTMLInputElement>(null)
  useEffect(() => field.current?.focus(), [])
  const copy = async () => {
    field.current?.select()
    const isDone = await navigator.clipboard?.writeText(made.secret).then(
      () => true,
      () => false,
    )
    setCopied(isDone === true)
  }
  return (
    <div className={forms.form}>
      <p role="status">{fill(own.made, { sender: made.key.sender })}</p>
      <label className={styles.secret}>
        {own.secret}
        <input
          ref={field}
          readOnly
          spellCheck={false}
          value={made.secret}
          data-testid="key-secret"
          onFocus={(event) => event.target.select()}
        />
      </label>
      <p role="status" className={forms.done}>
        {isCopied ? own.copied : ''}
      </p>
      <div className={forms.acts}>
        <Button look="primary" onClick={() => void copy()}>
          {own.copy}
        </Button>
        <Button onClick={onSeen}>{own.seen}</Button>
      </div>
    </div>
  )
}
