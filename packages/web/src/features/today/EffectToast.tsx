import { useEffect, useState } from 'react'
import { Button } from '../../ui/Button.tsx'
import { useWords } from '../../words/WordsContext.tsx'
import styles from './EffectToast.module.css'
import type { Effect } from './effect.ts'
import { effectSentence } from './effectSentence.ts'

const stayMs = 20_000
type Props = { effect: Effect | null; onUndo: () => void; onClose: () => void }

/** What the last decision did, with undo. It stays for 20 s, longer while pointed at or focused; also announced. */
export function EffectToast({ effect, onUndo, onClose }: Props) {
  const { words, format } = useWords()
  const [isHeld, setHeld] = useState(false)
  useEffect(() => {
    if (!effect || isHeld) return
    const timer = setTimeout(onClose, stayMs)
    return () => clearTimeout(timer)
  }, [effect, isHeld, onClose])
  const text = effect ? effectSentence(effect, words, format) : ''
  return (
    <>
      <p className="sr-only" role="status">
        {text}
      </p>
      {effect ? (
        // biome-ignore lint/a11y/noStaticElementInteractions: pointing at it only keeps it from leaving
        <div
          className={styles.toast}
          data-testid="effect"
          onMouseEnter={() => setHeld(true)}
          onMouseLeave={() => setHeld(false)}
          onFocus={() => setHeld(true)}
          onBlur={() => setHeld(false)}
        >
          <p aria-hidden="true">{text}</p>
          <div className={styles.acts}>
            {effect.done.kind === 'decided' ? (
              <Button hint="U" onClick={onUndo}>
                {words.actUndo}
              </Button>
            ) : null}
            <Button look="icon" aria-label={words.close} onClick={onClose}>
              ×
            </Button>
          </div>
        </div>
      ) : null}
    </>
  )
}
