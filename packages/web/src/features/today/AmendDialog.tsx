import type { DayEvidence, DecideAsk } from '@gaugewright/contract'
import { type AmountChoice, parseAmount } from '@gaugewright/science'
import { type FormEvent, useEffect, useId, useRef, useState } from 'react'
import { Button } from '../../ui/Button.tsx'
import { Dialog } from '../../ui/Dialog.tsx'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import styles from './AmendDialog.module.css'

type Props = {
  evidence: DayEvidence
  onAmend: (amended: NonNullable<DecideAsk['amended']>) => void
  onClose: () => void
}

/** A small editor, filled with the proposal (or the reading itself): Enter takes it. */
export function AmendDialog({ evidence, onAmend, onClose }: Props) {
  const { words, format, language } = useWords()
  const start = evidence.proposal ?? evidence.reading
  const [text, setText] = useState(format.amountBare(start.amountUm, start.isTrace))
  const [firstDay, setFirstDay] = useState(start.firstDay)
  const [lastDay, setLastDay] = useState(start.lastDay)
  const [trouble, setTrouble] = useState<{ text: string; choices: AmountChoice[] } | null>(null)
  const field = useRef<HTMLInputElement>(null)
  const troubleId = useId()
  useEffect(() => {
    field.current?.focus()
    field.current?.select()
  }, [])
  const take = (amountUm: number, isTrace: boolean) => {
    if (lastDay < firstDay) setTrouble({ text: words.amendDays, choices: [] })
    else onAmend({ amountUm, isTrace, firstDay, lastDay })
  }
  const submit = (event: FormEvent) => {
    event.preventDefault()
    const dayCount = Math.max(1, Math.round((Date.parse(lastDay) - Date.parse(firstDay)) / 86_400_000) + 1)
    const answer = parseAmount(text, { unit: format.unit, language, dayCount })
    if (answer.kind === 'amount') return take(answer.amountUm, answer.isTrace)
    if (answer.kind === 'missing') setTrouble({ text: words.amendNothing, choices: [] })
    else setTrouble({ text: answer.advice, choices: answer.kind === 'question' ? answer.choices : [] })
    field.current?.focus()
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
          {trouble?.text ?? words.amendHint}
        </p>
        {trouble && trouble.choices.length > 0 ? (
          <div className={styles.choices}>
            {trouble.choices.map((choice) =>
              choice.kind === 'amount' ? (
                <Button key={choice.text} onClick={() => take(choice.amountUm, choice.isTrace)}>
                  {choice.text}
                </Button>
              ) : null,
            )}
          </div>
        ) : null}
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
