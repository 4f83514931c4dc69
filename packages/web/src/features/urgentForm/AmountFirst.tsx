import { rainIntensity } from '@gaugewright/science'
import { type FormEvent, useId, useState } from 'react'
import { fill } from '../../words/fill.ts'
import { useFormInUse } from './FormContext.tsx'
import styles from './form.module.css'
import { OneOf } from './Options.tsx'
import { typedNumber, typedRate, typedUm, writeRate, writeSnowRate } from './typedRate.ts'
import type { Seen } from './urgentDraft.ts'

const minutesOffered = ['10', '15', '30', '60'] as const
const mmPerTyped = { in: 25.4, cm: 10 } as const

/** Rain or new snow over some minutes, with the rate worked out while it is typed. */
export function AmountFirst({ kind, onSeen }: { kind: 'rain' | 'snow'; onSeen: (seen: Seen) => void }) {
  const { words, unit } = useFormInUse()
  const [amount, setAmount] = useState('')
  const [minutesChosen, setMinutesChosen] = useState<string | null>(null)
  const [minutesTyped, setMinutesTyped] = useState('')
  const [isTried, setTried] = useState(false)
  const ids = { amount: useId(), minutes: useId(), amountTrouble: useId() }

  // Snow is told in whole inches or centimetres and their parts, rain in the network's unit.
  const typedIn = kind === 'rain' ? unit : unit === 'in' ? 'in' : 'cm'
  const amountUm = kind === 'rain' ? typedUm(amount, unit) : snowUm(amount, typedIn === 'in' ? 'in' : 'cm')
  const minutes = typedNumber(minutesChosen === 'other' ? minutesTyped : (minutesChosen ?? ''))
  const isMinutes = minutes !== null && minutes >= 1 && minutes <= 1440
  const isAmount = amountUm !== null && amountUm <= (kind === 'rain' ? 2_000_000 : 5_000_000)
  const rate = typedRate(isAmount ? amountUm : null, isMinutes ? minutes : null)

  const submit = (event: FormEvent) => {
    event.preventDefault()
    setTried(true)
    if (!isAmount || !isMinutes) return
    if (kind === 'rain') onSeen({ kind, amountUm, minutes })
    else onSeen({ kind, depthMm: Math.max(1, amountUm / 1000), minutes })
  }

  const example = kind === 'rain' ? (unit === 'in' ? '0.80' : '20') : typedIn === 'in' ? '1.5' : '4'
  return (
    <form onSubmit={submit} noValidate>
      {kind === 'rain' ? <p className={styles.hint}>{words.rainHint}</p> : null}
      <div className={styles.field}>
        <label className={styles.label} htmlFor={ids.amount}>
          {fill(kind === 'rain' ? words.amount : words.depth, { unit: typedIn })}
        </label>
        <input
          id={ids.amount}
          inputMode="decimal"
          autoComplete="off"
          value={amount}
          aria-invalid={isTried && !isAmount}
          aria-describedby={isTried && !isAmount ? ids.amountTrouble : undefined}
          onChange={(event) => setAmount(event.target.value)}
        />
        {isTried && !isAmount ? (
          <p id={ids.amountTrouble} className={styles.trouble} role="alert">
            {fill(words.amountUnreadable, { example })}
          </p>
        ) : null}
      </div>
      <OneOf
        label={words.minutes}
        value={minutesChosen}
        options={[
          ...minutesOffered.map((offered) => ({ value: offered as string, label: offered as string })),
          { value: 'other', label: words.minutesOther },
        ]}
        onChange={setMinutesChosen}
      />
      {minutesChosen === 'other' ? (
        <div className={styles.field}>
          <label className={styles.label} htmlFor={ids.minutes}>
            {words.minutes}
          </label>
          <input
            id={ids.minutes}
            inputMode="numeric"
            autoComplete="off"
            value={minutesTyped}
            onChange={(event) => setMinutesTyped(event.target.value)}
          />
        </div>
      ) : null}
      {isTried && !isMinutes ? (
        <p className={styles.trouble} role="alert">
          {words.minutesUnreadable}
        </p>
      ) : null}
      <output className={styles.rate} htmlFor={ids.amount} data-testid="rate">
        {rate === null ? words.rateWaiting : <RateText kind={kind} mmPerH={rate} />}
      </output>
      <button type="submit" className={`${styles.button} ${styles.primary}`}>
        {words.send}
      </button>
    </form>
  )
}

function RateText({ kind, mmPerH }: { kind: 'rain' | 'snow'; mmPerH: number }) {
  const { words, unit, language } = useFormInUse()
  const write = kind === 'snow' ? writeSnowRate : writeRate
  const rate = fill(words.rate, { rate: write(mmPerH, unit, language) })
  if (kind === 'snow') return <strong>{rate}</strong>
  return (
    <>
      <strong>{rate}</strong>, {words.rateClasses[rainIntensity(mmPerH)]}
    </>
  )
}

function snowUm(text: string, typedIn: 'in' | 'cm'): number | null {
  const value = typedNumber(text)
  return value === null ? null : Math.round(value * mmPerTyped[typedIn] * 1000)
}
