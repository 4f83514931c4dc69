/** @jsxRuntime automatic */
/**
 * A measuring tube to scale, as one sees it bending down: short lines for the steps, long ones and numbers for the tens, and
 * water with a true surface. Heights: depth times the tube's magnification, in millimetres of the real tube; one unit of the
 * drawing is a millimetre. The surface is that of water at a wetted wall: it climbs by `climbUm` and falls off over the
 * capillary length (exp(-distance / 2.7 mm), the linear solution [Batchelor1967] 1.9), so that its middle is its bottom. Looked at
 * from above or below, the scale on the front wall and the water behind it part by the tangent of the angle (parallax).
 */
import { apparentUm, type GaugeDrill, TUBE_INNER_MM, TUBE_MAGNIFICATION } from '@gaugewright/science'

export interface GaugeTubeProps {
  drill: GaugeDrill
  /** Which fill of an overflow is in the tube. */
  fill: number
  label: string
  /** Show where to read: the bottom of the curve. */
  showAnswer?: boolean
  /** Draw only the neighbourhood of the surface, larger. */
  isClose?: boolean
  widthPx?: number
}

const CAPILLARY_MM = 2.7
const WALL_MM = 1.6
const SCALE_MM = 15
/** Shown above and below the surface when looked at closely, mm. */
const CLOSE_MM = 26

export function heightMm(depthUm: number): number {
  return (depthUm / 1000) * TUBE_MAGNIFICATION
}

export function GaugeTube({ drill, fill, label, showAnswer = false, isClose = false, widthPx }: GaugeTubeProps) {
  const { tubeUm, stepUm, unit, climbUm, drops } = drill
  const levelUm = drill.fillsUm[fill] ?? 0
  const topMm = heightMm(tubeUm) + 8
  const seenMm = heightMm(apparentUm(drill, levelUm))
  const radius = TUBE_INNER_MM / 2
  const [left, right] = [-radius - WALL_MM - SCALE_MM - 6, radius + WALL_MM + 3]
  const from = isClose ? Math.max(-4, seenMm - CLOSE_MM) : -6
  const to = isClose ? Math.max(seenMm, 0) + CLOSE_MM : topMm + 3
  const width = right - left
  const shown = widthPx ?? (isClose ? 300 : 150)
  const perTen = unit === 'in' ? 10 : 5
  const steps = Math.round(tubeUm / stepUm)
  return (
    <svg
      role="img"
      aria-label={label}
      data-tube=""
      viewBox={`${left} ${-to} ${width} ${to - from}`}
      width={shown}
      height={(shown * (to - from)) / width}
      fontFamily="system-ui, sans-serif"
    >
      <rect x={left} y={-to} width={width} height={to - from} fill="var(--tube-air, #ffffff)" />
      {levelUm > 0 ? <Water radius={radius} seenMm={seenMm} climbMm={heightMm(climbUm)} /> : null}
      {drops === 'none' ? null : <Drops kind={drops} radius={radius} />}
      <path
        d={`M${-radius},${-topMm}V0A${radius},4 0 0 0 ${radius},0V${-topMm}`}
        fill="none"
        stroke="var(--ink, #14211f)"
        strokeWidth={0.7}
      />
      <path
        d={`M${-radius - WALL_MM},${-topMm}V0.6A${radius + WALL_MM},5 0 0 0 ${radius + WALL_MM},0.6V${-topMm}`}
        fill="none"
        stroke="var(--ink, #14211f)"
        strokeWidth={0.45}
      />
      {Array.from({ length: steps + 1 }, (_, k) => k).map((k) => {
        const y = -heightMm(k * stepUm)
        const isLong = k % perTen === 0
        const isMiddle = unit === 'in' && k % 5 === 0 && !isLong
        const length = isLong ? 11 : isMiddle ? 8 : 5.5
        return (
          <g key={k}>
            <path
              data-mark={k}
              d={`M${-radius},${y}h${length}`}
              stroke="var(--ink, #14211f)"
              strokeWidth={isLong ? 0.6 : 0.38}
            />
            {isLong && k > 0 ? (
              <text
                x={-radius - WALL_MM - 1.5}
                y={y}
                fontSize={unit === 'in' ? 6.4 : 5.6}
                textAnchor="end"
                dominantBaseline="central"
                fill="var(--ink, #14211f)"
              >
                {unit === 'in'
                  ? ((k * stepUm) / 25_400).toFixed(2).replace(/^0/, '')
                  : String(Math.round((k * stepUm) / 1000))}
              </text>
            ) : null}
          </g>
        )
      })}
      {showAnswer && levelUm > 0 ? (
        <g data-answer="">
          <path
            d={`M${-radius},${-heightMm(levelUm)}H${right - 1}`}
            stroke="var(--fail, #9b1c2e)"
            strokeWidth={0.6}
            strokeDasharray="2 1.2"
          />
          <path d={`M${right - 1},${-heightMm(levelUm)}l-3,-1.8v3.6z`} fill="var(--fail, #9b1c2e)" />
        </g>
      ) : null}
    </svg>
  )
}

/** The surface from wall to wall; its middle is where a reading is taken. */
export function surfacePath(radius: number, seenMm: number, climbMm: number): string {
  const points: string[] = []
  for (let k = 0; k <= 64; k++) {
    const x = -radius + (k / 64) * 2 * radius
    const climb = climbMm * Math.exp(-(radius - Math.abs(x)) / CAPILLARY_MM)
    points.push(`${x.toFixed(2)},${(-(seenMm + climb)).toFixed(3)}`)
  }
  return points.join('L')
}

function Water({ radius, seenMm, climbMm }: { radius: number; seenMm: number; climbMm: number }) {
  const surface = surfacePath(radius, seenMm, climbMm)
  return (
    <g>
      <path d={`M${surface}L${radius},0A${radius},4 0 0 1 ${-radius},0Z`} fill="var(--tube-water, #9cc8e4)" />
      <path data-surface="" d={`M${surface}`} fill="none" stroke="var(--tube-line, #0b4f68)" strokeWidth={0.5} />
    </g>
  )
}

/** A trace lies on the bottom as a few drops; dew hangs on the wall all the way up, and the bottom is dry. */
function Drops({ kind, radius }: { kind: 'trace' | 'dew'; radius: number }) {
  const places =
    kind === 'trace'
      ? [-9, -3.5, 2, 8.5].map((x, k) => ({ x, y: 1.2 - (k % 2), r: 1.5 + (k % 3) * 0.4 }))
      : Array.from({ length: 46 }, (_, k) => ({
          x: (k % 2 === 0 ? -1 : 1) * (radius - 1.4 - ((k * 7) % 5) * 0.55),
          y: -14 - k * 4.9,
          r: 0.55 + ((k * 3) % 4) * 0.18,
        }))
  return (
    <g data-drops={kind} fill="var(--tube-water, #9cc8e4)" stroke="var(--tube-line, #0b4f68)" strokeWidth={0.3}>
      {places.map(({ x, y, r }) => (
        <ellipse key={`${x} ${y}`} cx={x} cy={y} rx={r} ry={kind === 'trace' ? r * 0.55 : r * 1.15} />
      ))}
    </g>
  )
}
