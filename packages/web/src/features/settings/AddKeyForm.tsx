import { type KeyScope, keyScopes } from '@gaugewright/contract'
import { type FormEvent, useRef, useState } from 'react'
import { problemFrom } from '../../api/problemError.ts'
import { Button } from '../../ui/Button.tsx'
import { Notice } from '../../ui/Notice.tsx'
import { useWords } from '../../words/WordsContext.tsx'
import forms from './AccessForms.module.css'
import styles from './KeysSection.module.css'
import { ShownKey } from './ShownKey.tsx'
import type { KeyDesk } from './useKeys.ts'

/** Make a key: for whom, and what it opens. The key is shown in its place until it is put away. */
export function AddKeyForm({ desk }: { desk: KeyDesk }) {
  const { words } = useWords()
  const { senderKeys: own } = words
  const [sender, setSender] = useState('')
  const [scopes, setScopes] = useState<readonly KeyScope[]>(['send'])
  const [trouble, setTrouble] = useState('')
  const senderField = useRef<HTMLInputElement>(null)
  const made = desk.add.data
  const tick = (scope: KeyScope) => {
    setTrouble('')
    setScopes(keyScopes.filter((one) => (one === scope ? !scopes.includes(one) : scopes.includes(one))))
  }
  const submit = (event: FormEvent) => {
    event.preventDefault()
    if (desk.add.isPending) return
    if (sender.trim() === '') {
      setTrouble(own.needSender)
      return senderField.current?.focus()
    }
    if (scopes.length === 0) return setTrouble(own.needScope)
    desk.add.mutate(
      { sender: sender.trim(), scopes: [...scopes] },
      {
        onSuccess: () => {
          setSender('')
          setScopes(['send'])
        },
      },
    )
  }
  if (made !== undefined) return <ShownKey made={made} onSeen={() => desk.add.reset()} />
  return (
    <form className={forms.form} onSubmit={submit} noValidate>
      <h3>{own.add}</h3>
      <div className={forms.row}>
        <div className={forms.field}>
          <label>
            {own.sender}
            <input
              ref={senderField}
              maxLength={80}
              autoComplete="off"
              value={sender}
              aria-invalid={trouble === own.needSender}
              onChange={(event) => {
                setTrouble('')
                setSender(event.target.value)
              }}
            />
          </label>
        </div>
      </div>
      <fieldset className={styles.scopes}>
        <legend>{own.opens}</legend>
        {keyScopes.map((scope) => (
          <label key={scope}>
            <input type="checkbox" checked={scopes.includes(scope)} onChange={() => tick(scope)} />
            {own.scopes[scope]}
          </label>
        ))}
      </fieldset>
      {desk.add.error ? <Notice problem={problemFrom(desk.add.error)} onDismiss={() => desk.add.reset()} /> : null}
      <p role="alert" className={forms.trouble}>
        {trouble}
      </p>
      <Button look="primary" type="submit" aria-disabled={desk.add.isPending}>
        {own.addNow}
      </Button>
    </form>
  )
}
