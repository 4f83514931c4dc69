import type { OutgoingSettings, ReminderSettings } from '@gaugewright/contract'
import { type FormEvent, useState } from 'react'
import { problemFrom } from '../../api/problemError.ts'
import { Button } from '../../ui/Button.tsx'
import { Choice } from '../../ui/Choice.tsx'
import { Notice } from '../../ui/Notice.tsx'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import styles from './AccessForms.module.css'
import { LabelledField } from './LabelledField.tsx'
import { whomText } from './outgoingView.ts'
import type { OutgoingDesk } from './useOutgoing.ts'

const usual: ReminderSettings = { isOn: false, atTime: '10:00', deskUrl: null, textUrl: null }

/** Whether, when and by what addresses people are reminded; and whom it would be now. */
export function RemindersForm({ desk, settings }: { desk: OutgoingDesk; settings: OutgoingSettings }) {
  const { words, format } = useWords()
  const { outgoing: own } = words
  const inForce = settings.reminders
  const [draft, setDraft] = useState<ReminderSettings>(inForce?.settings ?? usual)
  const change = (next: Partial<ReminderSettings>) => {
    desk.reminders.reset()
    setDraft((now) => ({ ...now, ...next }))
  }
  const submit = (event: FormEvent) => {
    event.preventDefault()
    if (!desk.reminders.isPending) desk.reminders.mutate({ settings: draft, by: 'coordinator' })
  }
  const error = desk.reminders.error ?? desk.whom.error
  return (
    <form className={styles.form} onSubmit={submit} noValidate>
      <h3>{own.reminders}</h3>
      <p>{own.remindersIntro}</p>
      <Choice
        label={own.mode}
        labelHidden
        value={draft.isOn ? 'on' : 'off'}
        options={(['off', 'on'] as const).map((value) => ({ value, label: own.modes[value] }))}
        onChange={(mode) => change({ isOn: mode === 'on' })}
      />
      <div className={styles.row}>
        <LabelledField label={fill(own.atTime, { time: settings.readingTime })}>
          <input type="time" value={draft.atTime} onChange={(event) => change({ atTime: event.target.value })} />
        </LabelledField>
        <LabelledField label={own.deskUrl}>
          <input
            type="url"
            autoComplete="off"
            maxLength={300}
            placeholder={own.deskUrlHint}
            value={draft.deskUrl ?? ''}
            onChange={(event) => change({ deskUrl: event.target.value === '' ? null : event.target.value })}
          />
        </LabelledField>
        <LabelledField label={own.textUrl}>
          <input
            type="url"
            autoComplete="off"
            maxLength={500}
            value={draft.textUrl ?? ''}
            onChange={(event) => change({ textUrl: event.target.value === '' ? null : event.target.value })}
          />
        </LabelledField>
      </div>
      {error ? <Notice problem={problemFrom(error)} onDismiss={() => desk.reminders.reset()} /> : null}
      <p role="status" className={styles.done}>
        {desk.reminders.isSuccess ? own.remindersSet : ''}
      </p>
      <div className={styles.acts}>
        <Button look="primary" type="submit" aria-disabled={desk.reminders.isPending}>
          {own.setReminders}
        </Button>
        <Button onClick={() => void desk.whom.refetch()}>{own.whomNow}</Button>
      </div>
      <p role="status" data-testid="whom">
        {desk.whom.data ? whomText(desk.whom.data, own) : ''}
      </p>
      {inForce ? <p>{fill(own.setBy, { time: format.instant(inForce.setAtUtc), who: inForce.by })}</p> : null}
    </form>
  )
}
