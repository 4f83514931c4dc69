import { type FormEvent, useState } from 'react'
import { problemFrom } from '../../api/problemError.ts'
import { Button } from '../../ui/Button.tsx'
import { Notice } from '../../ui/Notice.tsx'
import { useWords } from '../../words/WordsContext.tsx'
import styles from './AccessForms.module.css'
import { LabelledField } from './LabelledField.tsx'
import type { OutgoingDesk } from './useOutgoing.ts'

/** One mail to see whether mail is set up rightly. */
export function TestMail({ desk }: { desk: OutgoingDesk }) {
  const { words } = useWords()
  const { outgoing: own } = words
  const [to, setTo] = useState('')
  const submit = (event: FormEvent) => {
    event.preventDefault()
    if (!desk.test.isPending) desk.test.mutate({ to, by: 'coordinator' })
  }
  return (
    <form className={styles.form} onSubmit={submit} noValidate>
      <LabelledField label={own.testTo}>
        <input
          type="email"
          autoComplete="off"
          maxLength={254}
          value={to}
          onChange={(event) => {
            desk.test.reset()
            setTo(event.target.value)
          }}
        />
      </LabelledField>
      {desk.test.error ? <Notice problem={problemFrom(desk.test.error)} onDismiss={() => desk.test.reset()} /> : null}
      <p role="status" className={styles.done}>
        {desk.test.isSuccess ? own.testQueued : ''}
      </p>
      <Button type="submit" aria-disabled={desk.test.isPending}>
        {own.test}
      </Button>
    </form>
  )
}
