/** @jsxRuntime automatic */
/**
 * A yard from above, north up, to scale. `PlanShapes` draws what stands there in metres (y upwards is north, so that it is
 * turned over for the screen); the screen lays what can be dragged over it, paper frames it.
 */
import { boardOf, type Obstacle, type YardPlan, type YardPoint } from '@gaugewright/science'
import { type LengthUnit, lengthText, metresPer } from './length.ts'
import { obstacleName } from './siteSentences.ts'
import { siteWords } from './siteWords.ts'

export interface PlanFrame {
  westM: number
  northM: number
  widthM: number
  heightM: number
}

/** Everything of the plan with some room around it. */
export function planFrame(plan: YardPlan, leastM = 8): PlanFrame {
  const points: YardPoint[] = [
    ...plan.outline,
    ...plan.hazards.map(({ at }) => at),
    ...plan.obstacles.flatMap(cornersOf),
  ]
  if (plan.gauge !== null) points.push(plan.gauge.at)
  if (points.length === 0) points.push({ xM: 0, yM: 0 })
  const xs = points.map(({ xM }) => xM).filter(Number.isFinite)
  const ys = points.map(({ yM }) => yM).filter(Number.isFinite)
  const [west, east, south, north] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)]
  const size = Math.max(leastM, east - west, north - south)
  const room = size * 0.08
  const widthM = Math.max(leastM, east - west) + 2 * room
  const heightM = Math.max(leastM, north - south) + 2 * room
  return { westM: (west + east - widthM) / 2, northM: (south + north + heightM) / 2, widthM, heightM }
}

function cornersOf({ shape }: Obstacle): YardPoint[] {
  switch (shape.form) {
    case 'ring':
    case 'gable':
      return [...shape.ring]
    case 'line':
      return [...shape.points]
    case 'round':
      return [
        { xM: shape.center.xM - shape.radiusM, yM: shape.center.yM - shape.radiusM },
        { xM: shape.center.xM + shape.radiusM, yM: shape.center.yM + shape.radiusM },
      ]
    case 'bearing':
      return boardOf(shape)
  }
}

export function pathOf(points: readonly YardPoint[], isClosed: boolean): string {
  return points.length === 0 ? '' : `M${points.map(({ xM, yM }) => `${xM},${-yM}`).join('L')}${isClosed ? 'Z' : ''}`
}

interface ShapesProps {
  plan: YardPlan
  language: 'en' | 'es'
  /** Metres that a unit of text height takes: so that words keep their size at every scale. */
  textM: number
  selectedId?: string | null
  showNames?: boolean
}

const ink = 'var(--ink, #14211f)'
const soft = 'var(--ink-soft, #47554f)'

export function PlanShapes({ plan, language, textM, selectedId = null, showNames = true }: ShapesProps) {
  return (
    <g>
      <path
        d={pathOf(plan.outline, true)}
        fill="var(--yard, #eef3e6)"
        stroke={soft}
        strokeDasharray="6 4"
        vectorEffect="non-scaling-stroke"
      />
      {plan.obstacles.map((obstacle) => (
        <ObstacleShapeDrawn key={obstacle.id} obstacle={obstacle} isSelected={obstacle.id === selectedId} />
      ))}
      {plan.hazards.map(({ id, kind, at, reachM }) => (
        <g key={id} transform={`translate(${at.xM} ${-at.yM})`} data-hazard={kind}>
          {kind === 'sprinkler' ? (
            <circle
              r={reachM ?? 5}
              fill="none"
              stroke="var(--accent, #0b4f68)"
              strokeDasharray="2 3"
              vectorEffect="non-scaling-stroke"
            />
          ) : null}
          <path
            d={`M0,${-textM * 0.6}L${textM * 0.6},${textM * 0.5}L${-textM * 0.6},${textM * 0.5}Z`}
            fill={id === selectedId ? 'var(--accent, #0b4f68)' : 'var(--doubt, #8f4300)'}
            stroke="var(--panel, #fff)"
            vectorEffect="non-scaling-stroke"
          />
        </g>
      ))}
      {showNames
        ? plan.obstacles.map((obstacle) => {
            const at = middleOf(obstacle)
            return (
              <text
                key={obstacle.id}
                x={at.xM}
                y={-at.yM}
                fontSize={textM}
                fill={ink}
                textAnchor="middle"
                dominantBaseline="central"
                style={{ paintOrder: 'stroke', stroke: 'var(--panel, #fff)', strokeWidth: textM * 0.22 }}
              >
                {obstacleName(plan, obstacle.id, language)}
              </text>
            )
          })
        : null}
      {plan.gauge === null ? null : (
        <g transform={`translate(${plan.gauge.at.xM} ${-plan.gauge.at.yM})`} data-gauge="">
          <circle
            r={textM * 0.75}
            fill="var(--panel, #fff)"
            stroke={ink}
            strokeWidth="2"
            vectorEffect="non-scaling-stroke"
          />
          <circle r={textM * 0.28} fill={ink} />
        </g>
      )}
    </g>
  )
}

function ObstacleShapeDrawn({ obstacle, isSelected }: { obstacle: Obstacle; isSelected: boolean }) {
  const { shape, kind } = obstacle
  const stroke = isSelected ? 'var(--accent, #0b4f68)' : ink
  const common = { stroke, strokeWidth: isSelected ? 3 : 1.4, vectorEffect: 'non-scaling-stroke' as const }
  const built = 'var(--built, #d8d2c8)'
  const green = 'var(--green, #cfe0c3)'
  switch (shape.form) {
    case 'ring':
      return (
        <path d={pathOf(shape.ring, true)} fill={kind === 'tree' || kind === 'hedge' ? green : built} {...common} />
      )
    case 'gable':
      return (
        <g>
          <path d={pathOf(shape.ring, true)} fill={built} {...common} />
          <path d={pathOf(shape.ridge, false)} fill="none" {...common} strokeDasharray="5 3" />
        </g>
      )
    case 'round':
      return (
        <circle
          cx={shape.center.xM}
          cy={-shape.center.yM}
          r={Math.max(0, shape.radiusM)}
          fill={kind === 'tree' ? green : built}
          {...common}
        />
      )
    case 'line':
      return (
        <path
          d={pathOf(shape.points, false)}
          fill="none"
          {...common}
          strokeWidth={isSelected ? 5 : 3.5}
          strokeDasharray={kind === 'hedge' ? '1 4' : undefined}
          strokeLinecap="round"
        />
      )
    case 'bearing':
      return (
        <path
          d={pathOf(boardOf(shape), false)}
          fill="none"
          {...common}
          strokeWidth={isSelected ? 5 : 3.5}
          strokeDasharray="8 3"
        />
      )
  }
}

/** Where the name is written: the middle, of a line that of its longest part. */
function middleOf({ shape }: Obstacle): YardPoint {
  if (shape.form === 'round') return shape.center
  const points =
    shape.form === 'bearing' ? boardOf(shape) : shape.form === 'line' ? longestPart(shape.points) : shape.ring
  const count = Math.max(1, points.length)
  return {
    xM: points.reduce((sum, { xM }) => sum + xM, 0) / count,
    yM: points.reduce((sum, { yM }) => sum + yM, 0) / count,
  }
}

function longestPart(points: readonly YardPoint[]): readonly YardPoint[] {
  let longest = points.slice(0, 2)
  let most = 0
  for (let at = 1; at < points.length; at++) {
    const lengthM = Math.hypot(points[at]!.xM - points[at - 1]!.xM, points[at]!.yM - points[at - 1]!.yM)
    if (lengthM > most) {
      most = lengthM
      longest = [points[at - 1]!, points[at]!]
    }
  }
  return longest
}

/** A bar of a round length, some fifth of the frame wide. */
export function scaleBarM(frame: PlanFrame, unit: LengthUnit): number {
  const wanted = frame.widthM / 5 / metresPer[unit]
  const power = 10 ** Math.floor(Math.log10(wanted))
  const step = [1, 2, 5, 10].filter((one) => one * power <= wanted).at(-1) ?? 1
  return step * power * metresPer[unit]
}

interface Props {
  plan: YardPlan
  language: 'en' | 'es'
  unit: LengthUnit
  widthPx?: number
}

/** The whole sheet, with a bar and an arrow. */
export function PlanDrawing({ plan, language, unit, widthPx = 420 }: Props) {
  const frame = planFrame(plan)
  const textM = (frame.widthM / widthPx) * 11
  const barM = scaleBarM(frame, unit)
  const [left, bottom] = [frame.westM + textM, -frame.northM + frame.heightM - textM]
  return (
    <svg
      role="img"
      aria-label={siteWords[language].plan}
      viewBox={`${frame.westM} ${-frame.northM} ${frame.widthM} ${frame.heightM}`}
      width={widthPx}
      height={(widthPx * frame.heightM) / frame.widthM}
    >
      <PlanShapes plan={plan} language={language} textM={textM} />
      <g stroke={ink} fill="none">
        <path
          d={`M${left},${bottom}h${barM}m${-barM},${-textM * 0.4}v${textM * 0.8}m${barM},${-textM * 0.8}v${textM * 0.8}`}
          vectorEffect="non-scaling-stroke"
        />
        <path
          d={`M${frame.westM + frame.widthM - 2 * textM},${-frame.northM + 3.4 * textM}v${-2.6 * textM}l${-0.5 * textM},${textM}m${0.5 * textM},${-textM}l${0.5 * textM},${textM}`}
          vectorEffect="non-scaling-stroke"
        />
      </g>
      <text x={left + barM + textM * 0.5} y={bottom} fontSize={textM} fill={ink} dominantBaseline="central">
        {lengthText(barM, unit, language)}
      </text>
      <text
        x={frame.westM + frame.widthM - 2 * textM}
        y={-frame.northM + 4.5 * textM}
        fontSize={textM}
        fill={ink}
        textAnchor="middle"
      >
        {siteWords[language].compass[0]}
      </text>
    </svg>
  )
}
