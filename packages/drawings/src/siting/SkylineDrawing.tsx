/** @jsxRuntime automatic */
/** The skyline seen from the rim: elevation against bearing, with the two lines that rules of thumb go by. */
import type { Skyline, YardPlan } from '@gaugewright/science'
import { obstacleName } from './siteSentences.ts'
import { siteWords } from './siteWords.ts'

interface Props {
  skyline: Skyline
  plan: YardPlan
  language: 'en' | 'es'
  widthPx?: number
  heightPx?: number
}

const ink = 'var(--ink, #14211f)'
const soft = 'var(--ink-soft, #47554f)'
const line = 'var(--line, #d3dad5)'

export function SkylineDrawing({ skyline, plan, language, widthPx = 560, heightPx = 230 }: Props) {
  const words = siteWords[language]
  const [left, right, top, bottom] = [36, 8, 12, 26]
  const highest = Math.min(90, Math.max(60, Math.ceil((skyline.worstDeg + 6) / 15) * 15))
  const x = (bearing: number) => left + (bearing / 360) * (widthPx - left - right)
  const y = (angle: number) => heightPx - bottom - (Math.min(angle, highest) / highest) * (heightPx - top - bottom)
  const count = skyline.elevationDeg.length
  const at = (k: number) => `${x((k * 360) / count).toFixed(1)},${y(skyline.elevationDeg[k % count]!).toFixed(1)}`
  const outline = Array.from({ length: count + 1 }, (_, k) => at(k)).join('L')
  const named = skyline.obstacles
    .filter(({ elevationDeg }) => elevationDeg > 4)
    .sort((a, b) => b.elevationDeg - a.elevationDeg)
  const placed: { x: number; y: number }[] = []
  return (
    <svg
      role="img"
      aria-label={words.skyline}
      viewBox={`0 0 ${widthPx} ${heightPx}`}
      width={widthPx}
      height={heightPx}
      fontSize="11.5"
      fill={ink}
    >
      {Array.from({ length: highest / 15 + 1 }, (_, k) => k * 15).map((angle) => (
        <g key={angle}>
          <path d={`M${left},${y(angle)}H${widthPx - right}`} stroke={line} />
          <text x={left - 5} y={y(angle)} textAnchor="end" dominantBaseline="central" fill={soft}>
            {angle}°
          </text>
        </g>
      ))}
      <path
        d={`M${x(0)},${y(0)}L${outline}L${x(360)},${y(0)}Z`}
        fill="var(--built, #d8d2c8)"
        stroke={ink}
        strokeWidth="1.5"
      />
      {(
        [
          [26.565, words.twice, '7 4'],
          [45, words.once, '2 3'],
        ] as const
      ).map(([angle, label, dash]) => (
        <g key={angle}>
          <path
            d={`M${left},${y(angle)}H${widthPx - right}`}
            stroke="var(--doubt, #8f4300)"
            strokeWidth="1.5"
            strokeDasharray={dash}
          />
          <text x={widthPx - right - 2} y={y(angle) - 4} textAnchor="end" style={halo}>
            {label}
          </text>
        </g>
      ))}
      {named.map((one) => {
        const name = obstacleName(plan, one.obstacleId, language)
        const half = name.length * 3.2
        const atX = Math.min(widthPx - right - half, Math.max(left + half, x(one.bearingDeg)))
        let atY = y(one.elevationDeg) - 6
        while (placed.some((other) => Math.abs(other.x - atX) < half + 30 && Math.abs(other.y - atY) < 12)) atY -= 12
        placed.push({ x: atX, y: atY })
        return atY < top ? null : (
          <text key={one.obstacleId} x={atX} y={atY} textAnchor="middle" style={halo}>
            {name}
          </text>
        )
      })}
      {Array.from({ length: 9 }, (_, k) => k).map((k) => (
        <text
          key={k}
          x={x(k * 45)}
          y={heightPx - 8}
          textAnchor={k === 0 ? 'start' : k === 8 ? 'end' : 'middle'}
          fill={soft}
        >
          {words.compass[k % 8]}
        </text>
      ))}
      {skyline.worstDeg <= 0 ? (
        <text x={widthPx / 2} y={heightPx / 2} textAnchor="middle">
          {words.openSky}
        </text>
      ) : null}
    </svg>
  )
}

const halo = { paintOrder: 'stroke', stroke: 'var(--panel, #fff)', strokeWidth: 3 } as const
