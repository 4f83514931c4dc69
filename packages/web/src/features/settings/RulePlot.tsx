import type { RulePoint } from '@gaugewright/contract'
import type { PointerEvent } from 'react'
import { useWidth } from '../../hooks/useWidth.ts'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import styles from './RulePlot.module.css'
import { RulePlotMarks } from './RulePlotMarks.tsx'
import { countPlaces, leftShare, placeAtX, rulePlotShape } from './ruleView.ts'

type Props = {
  points: readonly RulePoint[]
  /** What is chosen, and what is in force (null: no rule), as places among the points. */
  place: number
  placeInForce: number | null
  isOn: boolean
  onPlace: (place: number) => void
}

const heightPx = 300

/**
 * The bargain of the rule at a glance: the less is left to a person, the more wrong readings pass. The slider is its way for
 * the keyboard and for those who do not see it; with a pointer the curve itself can be taken hold of.
 */
export function RulePlot({ points, place, placeInForce, isOn, onPlace }: Props) {
  const { words, format } = useWords()
  const { rule: own } = words
  const [holder, widthPx] = useWidth<HTMLDivElement>(560)
  const isNarrow = widthPx < 460
  const frame = { widthPx, heightPx, leftPx: isNarrow ? 34 : 44, rightPx: 12, topPx: 26, bottomPx: 44 }
  const { places, xTicks, yTicks } = rulePlotShape(points, frame)
  const chosen = points[place]
  const take = (event: PointerEvent<SVGSVGElement>) => {
    if (event.buttons !== 1) return
    const box = event.currentTarget.getBoundingClientRect()
    onPlace(placeAtX(places, event.clientX - box.left))
  }
  const bottom = heightPx - frame.bottomPx
  const band = [
    ...places.map(({ x, high }) => `${x},${high}`),
    ...[...places].reverse().map(({ x, low }) => `${x},${low}`),
  ]
  const summary = chosen
    ? fill(own.plotSummary, {
        plot: own.plot,
        odds: format.odds(chosen.letStandAt),
        share: format.percentFine(leftShare(chosen)),
        wrong: format.number(chosen.year.expected, countPlaces(chosen.year.expected)),
        low: chosen.year.low,
        high: chosen.year.high,
      })
    : own.plot
  return (
    <div ref={holder} className={styles.holder}>
      <svg
        className={styles.plot}
        width={widthPx}
        height={heightPx}
        role="img"
        aria-label={summary}
        onPointerDown={(event) => {
          event.currentTarget.setPointerCapture(event.pointerId)
          take(event)
        }}
        onPointerMove={take}
      >
        {yTicks.map(({ value, y }) => (
          <g key={value} className={styles.tick}>
            <path d={`M${frame.leftPx} ${y}H${widthPx - frame.rightPx}`} />
            <text x={frame.leftPx - 6} y={y + 4} textAnchor="end">
              {value}
            </text>
          </g>
        ))}
        {xTicks.map(({ value, x }) => (
          <g key={value} className={styles.tick}>
            <path d={`M${x} ${bottom}v5`} />
            <text x={x} y={bottom + 18} textAnchor="middle">
              {format.number(value, value > 0 && value < 1 ? 1 : 0)}
            </text>
          </g>
        ))}
        <text className={styles.axis} x={frame.leftPx - 6} y={14}>
          {own.axisWrong}
        </text>
        <text className={styles.axis} x={widthPx - frame.rightPx} y={heightPx - 6} textAnchor="end">
          {own.axisLeft}
        </text>
        <polygon className={styles.band} points={band.join(' ')} />
        <polyline className={styles.curve} points={places.map(({ x, y }) => `${x},${y}`).join(' ')} />
        <RulePlotMarks
          points={points}
          places={places}
          place={place}
          placeInForce={placeInForce}
          isOn={isOn}
          leftPx={frame.leftPx}
          bottomPx={bottom}
          widthPx={widthPx}
        />
      </svg>
    </div>
  )
}
