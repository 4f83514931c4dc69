import { useId, useState } from 'react'
import { useWidth } from '../../hooks/useWidth.ts'
import { fill } from '../../words/fill.ts'
import { useFormInUse } from './FormContext.tsx'
import styles from './form.module.css'
import { writeStone } from './hailSizes.ts'
import { pagePxFromMm } from './screenScale.ts'
import { usePageView } from './usePageView.ts'

interface Props {
  devicePxPerMm: number
  onTake: (diameterMm: number) => void
  onScaleAgain: () => void
}

const START_MM = 20
const LEAST_MM = 3
const MARGIN_PX = 4
const stepMm = { in: 25.4 / 50, mm: 0.5 } as const
const tickMm = { in: 25.4 / 4, mm: 5 } as const

/** A circle and a ruler of true size: the circle is made as large as the longest side of the stone. */
export function StoneCircle({ devicePxPerMm, onTake, onScaleAgain }: Props) {
  const { words, unit, language } = useFormInUse()
  const [box, widthPx] = useWidth<HTMLDivElement>(340)
  const view = usePageView()
  const [diameterMm, setDiameterMm] = useState(START_MM)
  const id = useId()
  const pxPerMm = pagePxFromMm(1, devicePxPerMm, view)
  const most = (widthPx - 2 * MARGIN_PX) / pxPerMm
  const shown = Math.min(diameterMm, most)
  const heightPx = Math.ceil(shown * pxPerMm) + 34
  const size = writeStone(shown, unit, language)
  const move = (mm: number) => setDiameterMm(Math.min(most, Math.max(LEAST_MM, shown + mm)))
  return (
    <section aria-label={words.scaleTitle}>
      <p>{words.stoneHint}</p>
      <div ref={box} className={styles.scaleBox}>
        <svg
          className={styles.circle}
          width={widthPx}
          height={heightPx}
          viewBox={`0 0 ${widthPx} ${heightPx}`}
          role="img"
          aria-label={size}
          data-testid="stone"
          data-mm={shown}
        >
          <circle
            cx={MARGIN_PX + (shown * pxPerMm) / 2}
            cy={30 + (shown * pxPerMm) / 2}
            r={Math.max(1, (shown * pxPerMm) / 2)}
          />
          <Ticks mostMm={most} pxPerMm={pxPerMm} everyMm={tickMm[unit]} />
        </svg>
      </div>
      <label className={styles.label} htmlFor={id}>
        {words.stoneSlider}
      </label>
      <div className={styles.step}>
        <button
          type="button"
          className={styles.button}
          aria-label={words.stoneSmaller}
          onClick={() => move(-stepMm[unit])}
        >
          −
        </button>
        <input
          id={id}
          type="range"
          min={LEAST_MM}
          max={most}
          step={stepMm[unit]}
          value={shown}
          aria-valuetext={size}
          onChange={(event) => setDiameterMm(Number(event.target.value))}
        />
        <button
          type="button"
          className={styles.button}
          aria-label={words.stoneLarger}
          onClick={() => move(stepMm[unit])}
        >
          +
        </button>
      </div>
      {shown >= most - stepMm[unit] ? <p className={styles.note}>{words.stoneTooLarge}</p> : null}
      <div className={styles.acts}>
        <button
          type="button"
          className={`${styles.button} ${styles.primary}`}
          onClick={() => onTake(Math.round(10 * shown) / 10)}
        >
          {fill(words.stoneTake, { size })}
        </button>
        <button type="button" className={styles.button} onClick={onScaleAgain}>
          {words.scaleAgain}
        </button>
      </div>
    </section>
  )
}

/** A ruler along the top, from the edge of the circle: every fourth tick (quarter inches) or second (5 mm) is long. */
function Ticks({ mostMm, pxPerMm, everyMm }: { mostMm: number; pxPerMm: number; everyMm: number }) {
  const ticks = Array.from({ length: Math.floor(mostMm / everyMm) + 1 }, (_, tick) => tick)
  const isLong = (tick: number) => tick % (everyMm === tickMm.in ? 4 : 2) === 0
  return (
    <g>
      {ticks.map((tick) => (
        <line
          key={tick}
          x1={MARGIN_PX + tick * everyMm * pxPerMm}
          x2={MARGIN_PX + tick * everyMm * pxPerMm}
          y1="2"
          y2={isLong(tick) ? 22 : 13}
          strokeWidth={isLong(tick) ? 2 : 1}
        />
      ))}
    </g>
  )
}
