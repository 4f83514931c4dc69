import { photoLimits } from '@gaugewright/contract'
import { type ChangeEvent, useId, useState } from 'react'
import { redrawOnPhone } from '../../api/photos/redrawOnPhone.ts'
import { fill } from '../../words/fill.ts'
import { useFormInUse } from './FormContext.tsx'
import styles from './form.module.css'

interface Props {
  count: number
  onPhoto: (jpeg: Blob) => Promise<void>
}

/** A picture from the camera or the phone, drawn anew before it is kept. */
export function PhotoField({ count, onPhoto }: Props) {
  const { words } = useFormInUse()
  const [state, setState] = useState<'idle' | 'working' | 'failed'>('idle')
  const [kept, setKept] = useState<string | null>(null)
  const ids = { input: useId(), hint: useId() }
  const isFull = count >= photoLimits.perReport
  const take = async (event: ChangeEvent<HTMLInputElement>) => {
    const input = event.target
    const file = input.files?.[0]
    if (file === undefined) return
    setState('working')
    setKept(null)
    try {
      const drawn = await redrawOnPhone(file)
      if (drawn === null) return setState('failed')
      await onPhoto(drawn.jpeg)
      setState('idle')
      const sizeKb = Math.round(drawn.jpeg.size / 1024)
      setKept(fill(words.photoKept, { number: count + 1, width: drawn.widthPx, height: drawn.heightPx, size: sizeKb }))
    } catch {
      setState('failed')
    } finally {
      // The same file may be chosen again.
      input.value = ''
    }
  }
  return (
    <div className={styles.field}>
      <label className={styles.label} htmlFor={ids.input}>
        {words.photoAdd}
      </label>
      <input
        id={ids.input}
        type="file"
        accept="image/*"
        disabled={isFull || state === 'working'}
        aria-describedby={ids.hint}
        onChange={(event) => void take(event)}
      />
      <p id={ids.hint} className={styles.hint}>
        {isFull ? words.photoMany : words.photoHint}
      </p>
      <p role="status" className={state === 'failed' ? styles.trouble : undefined}>
        {state === 'working' ? words.photoWorking : state === 'failed' ? words.photoFailed : kept}
      </p>
    </div>
  )
}
