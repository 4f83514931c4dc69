import type { Role } from '@gaugewright/contract'
import { type FormEvent, useRef, useState } from 'react'
import { problemFrom } from '../../api/problemError.ts'
import { Button } from '../../ui/Button.tsx'
import { Choice } from '../../ui/Choice.tsx'
import { Notice } from '../../ui/Notice.tsx'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import styles from './AccessForms.module.css'
import { RoleSelect } from './RoleSelect.tsx'
import type { AccessDesk } from './useAccess.ts'

type Draft = { name: string; mail: string; role: Role; language: 'en' | 'es'; gauges: string }

/** Add a person: name, role, where to write to, and the gauges that they read. */
export function AddPersonForm({ desk }: { desk: AccessDesk }) {
  const { words, language } = useWords()
  const { access: own } = words
  const empty: Draft = { name: '', mail: '', role: 'observer', language, gauges: '' }
  const [draft, setDraft] = useState(empty)
  const [done, setDone] = useState('')
  const [isMissing, setMissing] = useState(false)
  const nameField = useRef<HTMLInputElement>(null)
  const change = (next: Partial<Draft>) => {
    setDone('')
    setMissing(false)
    setDraft((now) => ({ ...now, ...next }))
  }
  const submit = (event: FormEvent) => {
    event.preventDefault()
    const name = draft.name.trim()
    if (desk.add.isPending) return
    if (name === '') {
      setMissing(true)
      return nameField.current?.focus()
    }
    const gauges = draft.gauges.split(/[\s,]+/).filter((code) => code !== '')
    const ask = { ...draft, name, mail: draft.mail.trim() || null, gauges }
    desk.add.mutate(ask, {
      onSuccess: () => {
        setDraft(empty)
        setDone(fill(own.added, { name }))
      },
    })
  }
  return (
    <form className={styles.form} onSubmit={submit} noValidate>
      <h3>{own.add}</h3>
      <div className={styles.row}>
        <Field label={own.name}>
          <input
            ref={nameField}
            maxLength={120}
            autoComplete="off"
            value={draft.name}
            aria-invalid={isMissing}
            onChange={(event) => change({ name: event.target.value })}
          />
        </Field>
        <Field label={own.mail}>
          <input
            type="email"
            maxLength={254}
            autoComplete="off"
            value={draft.mail}
            onChange={(event) => change({ mail: event.target.value })}
          />
        </Field>
        <RoleSelect label={own.role} value={draft.role} onChange={(role) => change({ role })} />
        <Field label={own.gaugesHint}>
          <input
            autoComplete="off"
            autoCapitalize="characters"
            spellCheck={false}
            value={draft.gauges}
            onChange={(event) => change({ gauges: event.target.value })}
          />
        </Field>
      </div>
      <Choice
        label={own.language}
        value={draft.language}
        options={(['en', 'es'] as const).map((value) => ({ value, label: words.languageNames[value] }))}
        onChange={(next) => change({ language: next })}
      />
      {desk.add.error ? <Notice problem={problemFrom(desk.add.error)} onDismiss={() => desk.add.reset()} /> : null}
      <p role={isMissing ? 'alert' : 'status'} className={isMissing ? styles.trouble : styles.done}>
        {isMissing ? own.needName : done}
      </p>
      <Button look="primary" type="submit" aria-disabled={desk.add.isPending}>
        {own.addNow}
      </Button>
    </form>
  )
}

function Field({ label, children }: { label: string; children: React.ReactNode }) {
  return (
    <div className={styles.field}>
      {/* biome-ignore lint/a11y/noLabelWithoutControl: the control is what stands inside */}
      <label>
        {label}
        {children}
      </label>
    </div>
  )
}
