import type { Who } from '@gaugewright/contract'
import { type FormEvent, type ReactNode, useEffect, useId, useRef, useState } from 'react'
import { problemFrom } from '../../api/problemError.ts'
import { useStored } from '../../hooks/useStored.ts'
import { Button } from '../../ui/Button.tsx'
import { Choice } from '../../ui/Choice.tsx'
import { Notice } from '../../ui/Notice.tsx'
import { PasswordField } from '../../ui/PasswordField.tsx'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'

import styles from './SignInPage.module.css'
import { useSignIn } from './useSignIn.ts'

type Way = 'password' | 'link'
type Props = { onSignedIn: (who: Who) => void; tools: ReactNode }

/** The way in: a password for those who work at the desk, a mailed link for those who read a gauge. */
export function SignInPage({ onSignedIn, tools }: Props) {
  const { words } = useWords()
  const { access: own } = words
  const [stored, setWay] = useStored('gaugewright.signInWay', 'password')
  const way: Way = stored === 'link' ? 'link' : 'password'
  const [mail, setMail] = useState('')
  const [password, setPassword] = useState('')
  const [missing, setMissing] = useState<'mail' | 'password' | null>(null)
  const desk = useSignIn(onSignedIn)
  const noteId = useId()
  const mailField = useRef<HTMLInputElement>(null)
  useEffect(() => mailField.current?.focus(), [])
  const isBusy = desk.password.isPending || desk.ask.isPending || desk.use.isPending
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault()
    if (isBusy) return
    const gap = mail.trim() === '' ? 'mail' : way === 'password' && password === '' ? 'password' : null
    setMissing(gap)
    if (gap !== null) return event.currentTarget.querySelector<HTMLInputElement>(`[name=${gap}]`)?.focus()
    if (way === 'link') desk.ask.mutate(mail.trim())
    else desk.password.mutate({ mail: mail.trim(), password })
  }
  const error = desk.password.error ?? desk.ask.error ?? desk.use.error
  const note = missing === 'mail' ? own.needMail : missing === 'password' ? own.needPassword : null
  return (
    <main className={styles.page}>
      <header className={styles.head}>
        <img src="/mark.svg" alt="" width="40" height="40" />
        <p className={styles.app}>{words.appName}</p>
        {tools}
      </header>
      <h1>{own.signIn}</h1>
      <p className={styles.soft}>{own.intro}</p>
      {desk.use.isPending ? <p role="status">{own.usingLink}</p> : null}
      {error ? <Notice problem={problemFrom(error)} /> : null}
      <form className={styles.form} onSubmit={submit} noValidate>
        <Choice
          label={own.way}
          value={way}
          options={(['password', 'link'] as const).map((value) => ({ value, label: own.ways[value] }))}
          onChange={(next) => {
            setWay(next)
            setMissing(null)
            desk.ask.reset()
            desk.password.reset()
          }}
        />
        <label className={styles.field}>
          {own.mail}
          <input
            ref={mailField}
            name="mail"
            type="email"
            inputMode="email"
            autoComplete="username"
            autoCapitalize="none"
            spellCheck={false}
            maxLength={254}
            value={mail}
            aria-invalid={missing === 'mail'}
            aria-describedby={noteId}
            onChange={(event) => setMail(event.target.value)}
          />
        </label>
        {way === 'password' ? (
          <PasswordField
            name="password"
            label={own.password}
            autoComplete="current-password"
            value={password}
            isInvalid={missing === 'password'}
            describedBy={noteId}
            onChange={setPassword}
          />
        ) : null}
        <p id={noteId} className={note ? styles.trouble : undefined} role={note ? 'alert' : undefined}>
          {note}
        </p>
        <Button look="primary" type="submit" aria-disabled={isBusy}>
          {way === 'link' ? own.sendLink : own.enter}
        </Button>
        <p role="status">
          {desk.ask.data && way === 'link' ? fill(own.linkSent, { minutes: String(desk.ask.data.minutes) }) : null}
        </p>
      </form>
    </main>
  )
}
