import type { RulePoint } from '@gaugewright/contract'
import { useWords } from '../../words/WordsContext.tsx'
import styles from './RulePlot.module.css'
import { labelledPlaces, type PlotPlace } from './ruleView.ts'

type Props = {
  points: readonly RulePoint[]
  places: readonly PlotPlace[]
  place: number
  placeInForce: number | null
  isOn: boolean
  leftPx: number
  bottomPx: number
  widthPx: number
}

/** Some thresholds along the curve, a ring where the rule in force lies, and a full dot with its lines for what is chosen. */
export function RulePlotMarks({ points, places, place, placeInForce, isOn, leftPx, bottomPx, widthPx }: Props) {
  const { words, format } = useWords()
  const { rule: own } = words
  const chosen = places[place]
  const inForce = placeInForce === null ? undefined : places[placeInForce]
  const isApart = inForce && chosen && Math.hypot(inForce.x - chosen.x, inForce.y - chosen.y) > 18
  const anchor = (x: number) => (x > widthPx * 0.6 ? 'end' : 'start')
  const beside = (x: number) => (x > widthPx * 0.6 ? -9 : 9)
  const isNearEnd = (x: number) => x > widthPx - 60
  // Away from the chosen point, so that neither hides the other, as far as there is room.
  const isToLeft = (at: PlotPlace) => isNearEnd(at.x) || (chosen && chosen.x > at.x && at.x > leftPx + 52)
  const far = (at: PlotPlace) => !chosen || Math.hypot(at.x - chosen.x, at.y - chosen.y) > 34
  return (
    <>
      {labelledPlaces(points, places, 40).map((i) => {
        const at = places[i]
        const point = points[i]
        return at && point && far(at) ? (
          <g key={point.letStandAt} className={styles.step}>
            <circle cx={at.x} cy={at.y} r="2.5" />
            <text
              x={at.x + (isNearEnd(at.x) ? 0 : 6)}
              y={at.y - (isNearEnd(at.x) ? 9 : 6)}
              textAnchor={isNearEnd(at.x) ? 'end' : 'start'}
            >
              {format.odds(point.letStandAt)}
            </text>
          </g>
        ) : null
      })}
      {inForce && isApart ? (
        <g className={styles.force}>
          <circle cx={inForce.x} cy={inForce.y} r="7" />
          <text
            x={inForce.x + (isToLeft(inForce) ? -9 : 9)}
            y={inForce.y + 20}
            textAnchor={isToLeft(inForce) ? 'end' : 'start'}
          >
            {own.markForce}
          </text>
        </g>
      ) : null}
      {chosen ? (
        <g className={isOn ? styles.chosen : styles.none}>
          <path d={`M${leftPx} ${chosen.y}H${chosen.x}V${bottomPx}`} />
          <path className={styles.range} d={`M${chosen.x} ${chosen.low}V${chosen.high}`} />
          <circle cx={chosen.x} cy={chosen.y} r="7" />
          <text
            x={chosen.x + beside(chosen.x) + (anchor(chosen.x) === 'start' ? 3 : -3)}
            y={chosen.y - 10}
            textAnchor={anchor(chosen.x)}
          >
            {isOn ? format.odds(points[place]?.letStandAt ?? 0) : own.historyNone}
            {inForce && !isApart ? `, ${own.markForce}` : ''}
          </text>
        </g>
      ) : null}
    </>
  )
}
