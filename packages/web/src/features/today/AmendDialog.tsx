import type { DayEvidence, DecideAsk } from '@gaugewright/contract'
import { type FormEvent, useEffect, useId, useRef, useState } from 'react'
import { Button } from '../../ui/Button.tsx'
import { Dialog } from '../../ui/Dialog.tsx'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import styles from './AmendDialog.module.css'
import { largestDailyUm, readTypedAmount } from './amendView.ts'

type Props = {
  evidence: DayEvidence
  onAmend: (amended: NonNullable<DecideAsk['amended']>) => void
  onClose: () => void
}

/** A small editor, filled with the proposal (or the reading itself): Enter takes it. */
export function AmendDialog({ evidence, onAmend, onClose }: Props) {
  const { words, format } = useWords()
  const start = evidence.proposal ?? evidence.reading
  const [text, setText] = useState(format.amountBare(start.amountUm, start.isTrace))
  const [firstDay, setFirstDay] = useState(start.firstDay)
  const [lastDay, setLastDay] = useState(start.lastDay)
  const [trouble, setTrouble] = useState<string | null>(null)
  const field = useRef<HTMLInputElement>(null)
  const troubleId = useId()
  useEffect(() => {
    field.current?.focus()
    field.current?.select()
  }, [])
  const submit = (event: FormEvent) => {
    event.preventDefault()
    const typed = readTypedAmount(text, format.unit)
    if (!typed.ok) {
      const most = fill(words.amendTooLarge, { max: format.um(largestDailyUm) })
      setTrouble({ notAmount: words.amendNotAmount, unclear: words.amendUnclear, tooLarge: most }[typed.why])
      field.current?.focus()
    } else if (lastDay < firstDay) setTrouble(words.amendDays)
    else onAmend({ amountUm: typed.amountUm, isTrace: typed.isTrace, firstDay, lastDay })
  }
  return (
    <Dialog title={fill(words.amendTitle, { gauge: evidence.name })} closeLabel={words.close} onClose={onClose}>
      <form className={styles.form} onSubmit={submit} noValidate>
        <label className={styles.amount}>
          {fill(words.amendAmount, { unit: format.unitName })}
          <input
            ref={field}
            inputMode="decimal"
            autoComplete="off"
            value={text}
            aria-invalid={trouble !== null}
            aria-describedby={troubleId}
            onChange={(event) => {
              setText(event.target.value)
              setTrouble(null)
            }}
          />
        </label>
        <label>
          {words.amendFirstDay}
          <input
            type="date"
            value={firstDay}
            max={lastDay}
            onChange={(event) => setFirstDay(event.target.value || firstDay)}
          />
        </label>
        <label>
          {words.amendLastDay}
          <input type="date" value={lastDay} onChange={(event) => setLastDay(event.target.value || lastDay)} />
        </label>
        <p id={troubleId} className={trouble ? styles.trouble : styles.hint} role={trouble ? 'alert' : undefined}>
          {trouble ?? words.amendHint}
        </p>
        <div className={styles.acts}>
          <Button onClick={onClose}>{words.amendCancel}</Button>
          <Button look="primary" type="submit">
            {words.amendSave}
          </Button>
        </div>
      </form>
    </Dialog>
  )
}
