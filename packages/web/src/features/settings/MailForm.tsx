import type { MailSettings, OutgoingSettings } from '@gaugewright/contract'
import { type FormEvent, useState } from 'react'
import { problemFrom } from '../../api/problemError.ts'
import { Button } from '../../ui/Button.tsx'
import { Choice } from '../../ui/Choice.tsx'
import { Notice } from '../../ui/Notice.tsx'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import styles from './AccessForms.module.css'
import { LabelledField } from './LabelledField.tsx'
import { mailGap } from './outgoingView.ts'
import { TestMail } from './TestMail.tsx'
import type { OutgoingDesk } from './useOutgoing.ts'

const usual: MailSettings = { host: '', port: 587, security: 'starttls', user: null, from: '', fromName: '' }
const by = 'coordinator'

/** The mail server and the address that mail comes from. The password is not asked for: it stays in the environment. */
export function MailForm({ desk, settings }: { desk: OutgoingDesk; settings: OutgoingSettings }) {
  const { words, format } = useWords()
  const { outgoing: own } = words
  const inForce = settings.mail
  const [draft, setDraft] = useState<MailSettings>(inForce?.settings ?? usual)
  const [done, setDone] = useState('')
  const [gap, setGap] = useState<string | null>(null)
  const change = (next: Partial<MailSettings>) => {
    setDone('')
    setGap(null)
    desk.mail.reset()
    setDraft((now) => ({ ...now, ...next }))
  }
  const submit = (event: FormEvent) => {
    event.preventDefault()
    const missing = mailGap(draft, own)
    setGap(missing)
    if (missing !== null) return
    if (!desk.mail.isPending) desk.mail.mutate({ settings: draft, by }, { onSuccess: () => setDone(own.mailSet) })
  }
  const stop = () => desk.mail.mutate({ settings: null, by }, { onSuccess: () => setDone(own.mailStopped) })
  return (
    <div>
      <form className={styles.form} onSubmit={submit} noValidate>
        <h3>{own.mail}</h3>
        <div className={styles.row}>
          <LabelledField label={own.host}>
            <input
              autoComplete="off"
              autoCapitalize="none"
              spellCheck={false}
              maxLength={253}
              value={draft.host}
              aria-invalid={gap === own.needHost}
              onChange={(event) => change({ host: event.target.value })}
            />
          </LabelledField>
          <LabelledField label={own.port}>
            <input
              inputMode="numeric"
              autoComplete="off"
              value={draft.port === 0 ? '' : draft.port}
              aria-invalid={gap === own.needPort}
              onChange={(event) => change({ port: Number(event.target.value.replace(/\D/g, '').slice(0, 5)) })}
            />
          </LabelledField>
          <LabelledField label={own.user}>
            <input
              autoComplete="off"
              autoCapitalize="none"
              spellCheck={false}
              maxLength={254}
              value={draft.user ?? ''}
              onChange={(event) => change({ user: event.target.value === '' ? null : event.target.value })}
            />
          </LabelledField>
          <LabelledField label={own.from}>
            <input
              type="email"
              autoComplete="off"
              maxLength={254}
              value={draft.from}
              aria-invalid={gap === own.needFrom}
              onChange={(event) => change({ from: event.target.value })}
            />
          </LabelledField>
          <LabelledField label={own.fromName}>
            <input
              autoComplete="off"
              maxLength={120}
              value={draft.fromName}
              onChange={(event) => change({ fromName: event.target.value })}
            />
          </LabelledField>
        </div>
        <Choice
          label={own.security}
          value={draft.security}
          options={(['starttls', 'tls', 'none'] as const).map((value) => ({ value, label: own.securities[value] }))}
          onChange={(security) => change({ security })}
        />
        <p>{own.password}</p>
        {desk.mail.error ? <Notice problem={problemFrom(desk.mail.error)} onDismiss={() => desk.mail.reset()} /> : null}
        <p role={gap ? 'alert' : 'status'} className={gap ? styles.trouble : styles.done}>
          {gap ?? done}
        </p>
        <div className={styles.acts}>
          <Button look="primary" type="submit" aria-disabled={desk.mail.isPending}>
            {own.setMail}
          </Button>
          {inForce ? <Button onClick={stop}>{own.stopMail}</Button> : null}
        </div>
        {inForce ? <p>{fill(own.setBy, { time: format.instant(inForce.setAtUtc), who: inForce.by })}</p> : null}
      </form>
      {settings.carriers.mail.isReady ? <TestMail desk={desk} /> : null}
    </div>
  )
}
