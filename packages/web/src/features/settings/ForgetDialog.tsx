import type { Person } from '@gaugewright/contract'
import { problemFrom } from '../../api/problemError.ts'
import { Button } from '../../ui/Button.tsx'
import { Dialog } from '../../ui/Dialog.tsx'
import { Notice } from '../../ui/Notice.tsx'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import styles from './AccessForms.module.css'
import type { AccessDesk } from './useAccess.ts'

type Props = { desk: AccessDesk; person: Person; onDone: () => void; onClose: () => void }

/** The one act here that cannot be undone: asked for twice. */
export function ForgetDialog({ desk, person, onDone, onClose }: Props) {
  const { words } = useWords()
  const { access: own } = words
  const close = () => {
    desk.forget.reset()
    onClose()
  }
  const forget = () => {
    if (desk.forget.isPending) return
    desk.forget.mutate(
      { personId: person.id },
      {
        onSuccess: () => {
          onDone()
          close()
        },
      },
    )
  }
  return (
    <Dialog title={fill(own.forgetTitle, { name: person.name })} closeLabel={own.close} onClose={close}>
      <div className={styles.form}>
        <p>{own.forgetText}</p>
        {desk.forget.error ? <Notice problem={problemFrom(desk.forget.error)} /> : null}
        <div className={styles.acts}>
          <Button onClick={close}>{own.cancel}</Button>
          <Button look="primary" onClick={forget}>
            {own.forgetNow}
          </Button>
        </div>
      </div>
    </Dialog>
  )
}
