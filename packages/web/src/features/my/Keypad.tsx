import type { Unit } from '@gaugewright/science'
import { fill } from '../../words/fill.ts'
import type { MyWords } from '../../words/myWords.ts'
import { partsOf, popDigit, pushDigit } from './amountText.ts'
import styles from './Keypad.module.css'

type Props = {
  places: number
  unit: Unit
  mark: string
  words: MyWords
  onPlaces: (places: number) => void
}

/** Digits move in from the right and the point stays: 4, then 0, is 0.40. There is no point to forget. */
export function Keypad({ places, unit, mark, words, onPlaces }: Props) {
  const { whole, broken } = partsOf(places, unit)
  const { report } = words
  const unitName = words.options.units[unit]
  return (
    <fieldset
      className={styles.pad}
      onKeyDown={(press) => {
        if (press.ctrlKey || press.altKey || press.metaKey) return
        if (/^\d$/.test(press.key)) onPlaces(pushDigit(places, Number(press.key), unit))
        else if (press.key === 'Backspace') onPlaces(popDigit(places))
        else return
        press.preventDefault()
      }}
    >
      <legend className="sr-only">{fill(report.keypad, { unit: unitName })}</legend>
      <output className={styles.figures} data-testid="typed" aria-live="polite">
        <span className={styles.whole}>{whole}</span>
        <span className={styles.point}>{mark}</span>
        <span className={styles.broken}>{broken}</span> <span className={styles.unit}>{unit}</span>
      </output>
      <p className={styles.how}>{report.keypadHow}</p>
      <div className={styles.keys}>
        {[1, 2, 3, 4, 5, 6, 7, 8, 9].map((digit) => (
          <button key={digit} type="button" onClick={() => onPlaces(pushDigit(places, digit, unit))}>
            {digit}
          </button>
        ))}
        <button type="button" className={styles.word} onClick={() => onPlaces(0)}>
          {report.clear}
        </button>
        <button type="button" onClick={() => onPlaces(pushDigit(places, 0, unit))}>
          0
        </button>
        <button type="button" aria-label={report.back} onClick={() => onPlaces(popDigit(places))}>
          ⌫
        </button>
      </div>
    </fieldset>
  )
}
