import type { Person } from '@gaugewright/contract'
import { type FormEvent, useId, useState } from 'react'
import { problemFrom } from '../../api/problemError.ts'
import { Button } from '../../ui/Button.tsx'
import { Choice } from '../../ui/Choice.tsx'
import { Dialog } from '../../ui/Dialog.tsx'
import { Notice } from '../../ui/Notice.tsx'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import styles from './AccessForms.module.css'
import type { AccessDesk } from './useAccess.ts'

type Props = { desk: AccessDesk; person: Person; onDone: (name: string) => void; onClose: () => void }

/** What is known of a person, to be put right: name, address, number, language. Only what differs is sent. */
export function ChangePersonDialog({ desk, person, onDone, onClose }: Props) {
  const { words } = useWords()
  const { access: own } = words
  const id = useId()
  const [name, setName] = useState(person.name)
  const [mail, setMail] = useState(person.mail ?? '')
  const [phone, setPhone] = useState(person.phone ?? '')
  const [language, setLanguage] = useState(person.language)
  const [isMissing, setMissing] = useState(false)
  const close = () => {
    desk.change.reset()
    onClose()
  }
  const submit = (event: FormEvent) => {
    event.preventDefault()
    if (desk.change.isPending) return
    setMissing(name.trim() === '')
    if (name.trim() === '') return document.getElementById(`${id}-name`)?.focus()
    const number = phone.replace(/[\s().-]/g, '')
    const ask = {
      personId: person.id,
      ...(name.trim() !== person.name && { name: name.trim() }),
      ...(mail.trim() !== (person.mail ?? '') && { mail: mail.trim() || null }),
      ...(number !== (person.phone ?? '') && { phone: number || null }),
      ...(language !== person.language && { language }),
    }
    const done = () => {
      onDone(name.trim())
      close()
    }
    desk.change.mutate(ask, { onSuccess: done })
  }
  const fields = [
    { key: 'name', label: own.name, type: 'text', value: name, set: setName, max: 120 },
    { key: 'mail', label: own.mail, type: 'email', value: mail, set: setMail, max: 254 },
    { key: 'phone', label: own.phone, type: 'tel', value: phone, set: setPhone, max: 40 },
  ] as const
  return (
    <Dialog title={fill(own.changeOf, { name: person.name })} closeLabel={own.close} onClose={close}>
      <form className={styles.form} onSubmit={submit} noValidate>
        {fields.map(({ key, label, type, value, set, max }) => (
          <div key={key} className={`${styles.field} ${styles.row}`}>
            <label htmlFor={`${id}-${key}`}>{label}</label>
            <input
              id={`${id}-${key}`}
              type={type}
              maxLength={max}
              autoComplete="off"
              value={value}
              aria-invalid={key === 'name' && isMissing}
              onChange={(event) => set(event.target.value)}
            />
          </div>
        ))}
        <Choice
          label={own.language}
          value={language}
          options={(['en', 'es'] as const).map((value) => ({ value, label: words.languageNames[value] }))}
          onChange={setLanguage}
        />
        <p>{own.changeHint}</p>
        <p role="alert" className={styles.trouble}>
          {isMissing ? own.needName : ''}
        </p>
        {desk.change.error ? <Notice problem={problemFrom(desk.change.error)} /> : null}
        <div className={styles.acts}>
          <Button look="primary" type="submit" aria-disabled={desk.change.isPending}>
            {own.save}
          </Button>
          <Button onClick={close}>{own.cancel}</Button>
        </div>
      </form>
    </Dialog>
  )
}
