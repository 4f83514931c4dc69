import type { Language, Unit } from '@gaugewright/science'
import { formatAmount, sumFills } from '@gaugewright/science'
import { fill } from '../../words/fill.ts'
import type { MyWords } from '../../words/myWords.ts'
import { placeUm, tubeOf } from './amountText.ts'
import styles from './MyPage.module.css'

type Props = {
  fills: readonly number[]
  places: number
  unit: Unit
  language: Language
  words: MyWords
  onFills: (fills: number[], places: number) => void
}

/** The fills poured so far, their exact sum, and the way to the next one. */
export function Fills({ fills, places, unit, language, words, onFills }: Props) {
  const { report } = words
  const tube = tubeOf[unit]
  const fullPlaces = tube.tubeUm / placeUm[unit]
  const say = (amountUm: number) => formatAmount({ amountUm, isTrace: false }, unit, language, 'full')
  const all = [...fills, places].map((one) => ({ amountUm: one * placeUm[unit], isTrace: false }))
  const sum = sumFills(all, tube, language)
  return (
    <div className={styles.stack}>
      {fills.length === 0 ? null : (
        <ol className={styles.fills}>
          {fills.map((one, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: fills have no name but their order
            <li key={index}>
              <span>
                {fill(report.fill, { number: index + 1 })}: <strong>{say(one * placeUm[unit])}</strong>
              </span>
              <button
                type="button"
                className={styles.quiet}
                aria-label={fill(report.removeFill, { number: index + 1 })}
                onClick={() =>
                  onFills(
                    fills.filter((_, at) => at !== index),
                    places,
                  )
                }
              >
                ✕
              </button>
            </li>
          ))}
          <li data-testid="fills-sum">
            {report.fillsSum}: <strong>{sum.kind === 'amount' ? say(sum.amountUm) : '–'}</strong>
          </li>
        </ol>
      )}
      {places > fullPlaces && fills.length === 0 ? null : (
        <div className={styles.row}>
          <button
            type="button"
            className={styles.button}
            disabled={fills.length >= 11}
            onClick={() => onFills([...fills, fullPlaces], places === fullPlaces ? 0 : places)}
          >
            + {fill(report.fullTube, { amount: say(tube.tubeUm) })}
          </button>
          {places > 0 && places < fullPlaces ? (
            <button
              type="button"
              className={styles.button}
              disabled={fills.length >= 11}
              onClick={() => onFills([...fills, places], 0)}
            >
              {report.nextFill}
            </button>
          ) : null}
        </div>
      )}
    </div>
  )
}
