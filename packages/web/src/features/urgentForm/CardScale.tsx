import { useId, useState } from 'react'
import { useWidth } from '../../hooks/useWidth.ts'
import { fill } from '../../words/fill.ts'
import { useFormInUse } from './FormContext.tsx'
import styles from './form.module.css'
import { type CardEdge, cardMm, scaleFromCard } from './screenScale.ts'
import { usePageView } from './usePageView.ts'
import { writeNumber } from './writeNumber.ts'

/** CSS pixels in a millimetre: what phones and monitors have. */
const least = 2.6
const most = 8.5
const usualOfPhone = 6
const usualOfMonitor = 3.8
const MARGIN_PX = 6

/** Finds the true scale of the screen by a bank card: two lines as far apart as its edges. */
export function CardScale({ onScale }: { onScale: (devicePxPerMm: number) => void }) {
  const { words, language } = useFormInUse()
  const view = usePageView()
  const [box, widthPx] = useWidth<HTMLDivElement>(340)
  // A phone is narrower than the long edge of a card.
  const edge: CardEdge = widthPx < 560 ? 'short' : 'long'
  const [perMm, setPerMm] = useState(() => (innerWidth < 560 ? usualOfPhone : usualOfMonitor))
  const longestPx = widthPx - 2 * MARGIN_PX
  const edgePx = Math.min(longestPx, perMm * cardMm[edge])
  const heightPx = Math.min(220, edgePx * 0.62)
  const id = useId()
  const move = (px: number) => setPerMm(Math.min(most, Math.max(least, (edgePx + px) / cardMm[edge])))
  return (
    <section aria-label={words.scaleTitle}>
      <p>{edge === 'short' ? words.scaleHint : words.scaleHintLong}</p>
      <div ref={box} className={styles.scaleBox}>
        <svg
          className={styles.card}
          width={widthPx}
          height={heightPx}
          viewBox={`0 0 ${widthPx} ${heightPx}`}
          role="img"
          aria-label={fill(words.scaleValue, {
            px: writeNumber(edgePx, 1, language),
            mm: writeNumber(cardMm[edge], 2, language),
          })}
          data-testid="card"
          data-edge={edge}
          data-edge-px={edgePx}
        >
          <path d={`M${MARGIN_PX} 0h${edgePx}v${heightPx}h${-edgePx}z`} />
          <line x1={MARGIN_PX} x2={MARGIN_PX} y1="0" y2={heightPx} strokeWidth="4" />
          <line x1={MARGIN_PX + edgePx} x2={MARGIN_PX + edgePx} y1="0" y2={heightPx} strokeWidth="2" />
        </svg>
      </div>
      <label className={styles.label} htmlFor={id}>
        {words.scaleSlider}
      </label>
      <div className={styles.step}>
        <button type="button" className={styles.button} aria-label={words.scaleNarrower} onClick={() => move(-0.5)}>
          −
        </button>
        <input
          id={id}
          type="range"
          min={least * cardMm[edge]}
          max={Math.max(least * cardMm[edge] + 1, Math.min(longestPx, most * cardMm[edge]))}
          step="0.5"
          value={edgePx}
          aria-valuetext={fill(words.scaleValue, {
            px: writeNumber(edgePx, 1, language),
            mm: writeNumber(cardMm[edge], 2, language),
          })}
          onChange={(event) => setPerMm(Number(event.target.value) / cardMm[edge])}
        />
        <button type="button" className={styles.button} aria-label={words.scaleWider} onClick={() => move(0.5)}>
          +
        </button>
      </div>
      <div className={styles.acts}>
        <button
          type="button"
          className={`${styles.button} ${styles.primary}`}
          onClick={() => onScale(scaleFromCard(edgePx, edge, view))}
        >
          {words.scaleKeep}
        </button>
      </div>
    </section>
  )
}
