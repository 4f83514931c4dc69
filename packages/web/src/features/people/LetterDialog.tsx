/** A letter to one person: chosen, filled, read, edited, then sent, printed or copied. */
import { type LetterStep, letterSteps } from '@gaugewright/contract'
import { useQuery } from '@tanstack/react-query'
import { useEffect, useState } from 'react'
import { previewQuery, sendLetter } from '../../api/people.ts'
import { problemFrom } from '../../api/problemError.ts'
import { Button } from '../../ui/Button.tsx'
import { Dialog } from '../../ui/Dialog.tsx'
import { Notice } from '../../ui/Notice.tsx'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import styles from './PeoplePage.module.css'
import { usePersonAct } from './usePerson.ts'

export function LetterDialog({
  about,
  step: first,
  occasion,
  onClose,
  onSent,
}: {
  about: string
  step: LetterStep
  /** What the letter is about, where that is known already. */
  occasion?: string
  onClose: () => void
  onSent?: () => void
}) {
  const { words } = useWords()
  const own = words.people
  const [step, setStep] = useState<LetterStep>(first)
  const [id, setId] = useState(() => crypto.randomUUID())
  const preview = useQuery(previewQuery(about, step, occasion))
  const [subject, setSubject] = useState('')
  const [text, setText] = useState('')
  const [isCopied, setIsCopied] = useState(false)
  const send = usePersonAct(sendLetter, about)
  useEffect(() => {
    if (preview.data === undefined) return
    setSubject(preview.data.subject)
    setText(preview.data.text)
    setId(crypto.randomUUID())
  }, [preview.data])
  const { data } = preview
  const error = preview.error ?? send.error
  return (
    <Dialog title={own.write} closeLabel={words.close} onClose={onClose} wide>
      <form
        className={styles.form}
        onSubmit={(event) => {
          event.preventDefault()
          send.mutate(
            { about, step, id, subject, text },
            {
              onSuccess: () => {
                onSent?.()
                onClose()
              },
            },
          )
        }}
      >
        <label>
          {own.letter}
          <select value={step} onChange={(event) => setStep(event.target.value as LetterStep)}>
            {letterSteps.map((one) => (
              <option key={one} value={one}>
                {own.letterSteps[one]}
              </option>
            ))}
          </select>
        </label>
        {data === undefined ? null : (
          <p role="status" className={styles.soft}>
            {data.to === null ? own.noMail : data.canSend ? fill(own.to, { mail: data.to }) : own.mailOff}
          </p>
        )}
        <label>
          {own.subject}
          <input
            value={subject}
            maxLength={200}
            onChange={(event) => setSubject(event.target.value)}
            lang={data?.language}
          />
        </label>
        <label>
          {own.text}
          <textarea
            value={text}
            rows={12}
            maxLength={8000}
            onChange={(event) => setText(event.target.value)}
            lang={data?.language}
          />
        </label>
        {text.includes('{link}') ? <p className={styles.soft}>{own.linkNote}</p> : null}
        {error ? <Notice problem={problemFrom(error)} /> : null}
        <div className={styles.acts}>
          <Button
            type="submit"
            look="primary"
            disabled={data === undefined || data.to === null || !data.canSend || send.isPending}
          >
            {own.send}
          </Button>
          <Button
            onClick={() => void navigator.clipboard.writeText(`${subject}\n\n${text}`).then(() => setIsCopied(true))}
          >
            {isCopied ? own.copied : own.copy}
          </Button>
          <Button onClick={() => printText(subject, text)}>{own.print}</Button>
        </div>
      </form>
    </Dialog>
  )
}

/** The letter alone, on a sheet of its own. */
function printText(subject: string, text: string): void {
  const frame = document.createElement('iframe')
  frame.style.position = 'fixed'
  frame.style.inlineSize = '0'
  frame.style.blockSize = '0'
  document.body.append(frame)
  const page = frame.contentDocument
  if (page === null) return
  const heading = page.createElement('h1')
  heading.textContent = subject
  const body = page.createElement('pre')
  body.textContent = text
  body.style.font = '12pt/1.5 serif'
  body.style.whiteSpace = 'pre-wrap'
  page.body.append(heading, body)
  frame.contentWindow?.addEventListener('afterprint', () => frame.remove())
  frame.contentWindow?.print()
}
