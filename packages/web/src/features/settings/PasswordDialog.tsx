import type { Person } from '@gaugewright/contract'
import { type FormEvent, useState } from 'react'
import { problemFrom } from '../../api/problemError.ts'
import { Button } from '../../ui/Button.tsx'
import { Dialog } from '../../ui/Dialog.tsx'
import { Notice } from '../../ui/Notice.tsx'
import { PasswordField } from '../../ui/PasswordField.tsx'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import styles from './AccessForms.module.css'
import type { AccessDesk } from './useAccess.ts'

type Props = { desk: AccessDesk; person: Person; onClose: () => void }

/** A new password for somebody; who sets it shows their own first, once the desk asks for passwords at all. */
export function PasswordDialog({ desk, person, onClose }: Props) {
  const { words } = useWords()
  const { access: own } = words
  const [password, setPassword] = useState('')
  const [ownPassword, setOwnPassword] = useState('')
  const close = () => {
    desk.password.reset()
    onClose()
  }
  const submit = (event: FormEvent) => {
    event.preventDefault()
    if (desk.password.isPending) return
    desk.password.mutate({ personId: person.id, password, ownPassword }, { onSuccess: close })
  }
  return (
    <Dialog title={fill(own.setPasswordFor, { name: person.name })} closeLabel={own.close} onClose={close}>
      <form className={styles.form} onSubmit={submit} noValidate>
        {desk.isOpen ? null : (
          <PasswordField
            label={own.ownPassword}
            autoComplete="current-password"
            value={ownPassword}
            onChange={setOwnPassword}
          />
        )}
        <PasswordField label={own.newPassword} autoComplete="new-password" value={password} onChange={setPassword} />
        <p>{own.newPasswordHint}</p>
        {desk.password.error ? <Notice problem={problemFrom(desk.password.error)} /> : null}
        <div className={styles.acts}>
          <Button look="primary" type="submit" aria-disabled={desk.password.isPending}>
            {own.save}
          </Button>
          <Button onClick={close}>{own.cancel}</Button>
        </div>
      </form>
    </Dialog>
  )
}
