import type { Key } from '@gaugewright/contract'
import { problemFrom } from '../../api/problemError.ts'
import { Button } from '../../ui/Button.tsx'
import { Dialog } from '../../ui/Dialog.tsx'
import { Notice } from '../../ui/Notice.tsx'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import styles from './AccessForms.module.css'
import type { KeyDesk } from './useKeys.ts'

type Props = { desk: KeyDesk; of: Key; onDone: () => void; onClose: () => void }

/** Asks once more before a key is revoked for good. */
export function RevokeKeyDialog({ desk, of, onDone, onClose }: Props) {
  const { words } = useWords()
  const { senderKeys: own, access } = words
  const close = () => {
    desk.revoke.reset()
    onClose()
  }
  const revoke = () => {
    if (desk.revoke.isPending) return
    desk.revoke.mutate(
      { id: of.id },
      {
        onSuccess: () => {
          onDone()
          close()
        },
      },
    )
  }
  return (
    <Dialog title={fill(own.revokeTitle, { sender: of.sender })} closeLabel={access.close} onClose={close}>
      <p>{own.revokeText}</p>
      {desk.revoke.error ? <Notice problem={problemFrom(desk.revoke.error)} /> : null}
      <div className={styles.acts}>
        <Button look="primary" onClick={revoke} aria-disabled={desk.revoke.isPending}>
          {own.revokeNow}
        </Button>
        <Button onClick={close}>{access.cancel}</Button>
      </div>
    </Dialog>
  )
}
