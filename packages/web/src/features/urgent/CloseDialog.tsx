import type { UrgentItem } from '@gaugewright/contract'
import { type FormEvent, useEffect, useRef, useState } from 'react'
import { problemFrom } from '../../api/problemError.ts'
import { Button } from '../../ui/Button.tsx'
import { Dialog } from '../../ui/Dialog.tsx'
import { Notice } from '../../ui/Notice.tsx'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import styles from './Dialogs.module.css'
import { whatText } from './urgentView.ts'
import type { UrgentDesk } from './useUrgent.ts'

/** Why a report needs nothing more: one of the usual reasons, or in own words. Enter closes it. */
export function CloseDialog({ item, desk }: { item: UrgentItem; desk: UrgentDesk }) {
  const own = useWords()
  const say = own.words.urgent
  const [why, setWhy] = useState<string>(say.closeWhys[0] ?? '')
  const field = useRef<HTMLInputElement>(null)
  useEffect(() => {
    field.current?.focus()
    field.current?.select()
  }, [])
  const submit = (event: FormEvent) => {
    event.preventDefault()
    if (why.trim() !== '') desk.close(why.trim())
  }
  return (
    <Dialog
      title={fill(say.closeTitle, { what: whatText(item.report.seen, own) })}
      closeLabel={own.words.close}
      onClose={() => desk.open(null)}
    >
      <form className={styles.body} onSubmit={submit}>
        <div className={styles.acts}>
          {say.closeWhys.map((reason) => (
            <Button key={reason} onClick={() => setWhy(reason)}>
              {reason}
            </Button>
          ))}
        </div>
        <label className={styles.field}>
          {say.closeWhy}
          <input ref={field} value={why} maxLength={500} onChange={(event) => setWhy(event.target.value)} />
        </label>
        {desk.actError ? <Notice problem={problemFrom(desk.actError)} onDismiss={desk.forgetError} /> : null}
        <Button look="primary" type="submit" disabled={why.trim() === '' || desk.isActing}>
          {say.closeNow}
        </Button>
      </form>
    </Dialog>
  )
}
