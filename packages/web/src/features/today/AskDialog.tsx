import { useEffect, useRef, useState } from 'react'
import { Button } from '../../ui/Button.tsx'
import { Dialog } from '../../ui/Dialog.tsx'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import styles from './AskDialog.module.css'

type Props = { observerName: string | null; message: string; onClose: () => void }

/** The message to the observer, ready to copy. The reading is marked as asked already; sending is the coordinator's. */
export function AskDialog({ observerName, message, onClose }: Props) {
  const { words } = useWords()
  const [text, setText] = useState(message)
  const [state, setState] = useState<'new' | 'copied' | 'failed'>('new')
  const area = useRef<HTMLTextAreaElement>(null)
  const copyButton = useRef<HTMLDivElement>(null)
  useEffect(() => copyButton.current?.querySelector('button')?.focus(), [])
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(text)
      setState('copied')
    } catch {
      area.current?.focus()
      area.current?.select()
      setState('failed')
    }
  }
  return (
    <Dialog
      title={fill(words.askTitle, { observer: observerName ?? words.askObserver })}
      closeLabel={words.close}
      onClose={onClose}
    >
      <p className={styles.note}>{words.askNote}</p>
      <label className={styles.message}>
        <span className="sr-only">{words.askMessage}</span>
        <textarea ref={area} rows={11} value={text} onChange={(event) => setText(event.target.value)} />
      </label>
      <p role="status" className={styles.status}>
        {state === 'copied' ? words.askCopied : state === 'failed' ? words.askCopyFailed : ''}
      </p>
      <div className={styles.acts} ref={copyButton}>
        <Button look="primary" onClick={copy}>
          {words.askCopy}
        </Button>
        <Button onClick={onClose}>{words.askDone}</Button>
      </div>
    </Dialog>
  )
}
