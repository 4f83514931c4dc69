/** @jsxRuntime automatic */
/** A hailstone on a ruler, to scale: one unit is a millimetre. The ruler lies along the stone's own longest way. */
import type { HailDrill } from '@gaugewright/science'

export function HailDrawing({ drill, label, widthPx = 320 }: { drill: HailDrill; label: string; widthPx?: number }) {
  const { longMm, shortMm, turnDeg, unit } = drill
  const stepMm = unit === 'in' ? 25.4 / 16 : 1
  const marks = Math.floor(70 / stepMm)
  const perNumber = unit === 'in' ? 16 : 10
  const startMm = -longMm / 2
  return (
    <svg
      role="img"
      aria-label={label}
      viewBox="-50 -46 100 92"
      width={widthPx}
      height={(widthPx * 92) / 100}
      fontFamily="system-ui, sans-serif"
    >
      <g transform={`rotate(${-turnDeg})`}>
        <ellipse
          rx={longMm / 2}
          ry={shortMm / 2}
          fill="var(--hail, #dfe9ee)"
          stroke="var(--ink, #14211f)"
          strokeWidth={0.5}
        />
        <ellipse
          rx={longMm / 3.4}
          ry={shortMm / 3.6}
          fill="none"
          stroke="var(--ink-soft, #47554f)"
          strokeWidth={0.25}
        />
        <g transform={`translate(${startMm} ${shortMm / 2 + 2})`}>
          <rect
            x={-2}
            y={0}
            width={74}
            height={12}
            fill="var(--ruler, #f7edcf)"
            stroke="var(--ink, #14211f)"
            strokeWidth={0.35}
          />
          {Array.from({ length: marks + 1 }, (_, k) => k).map((k) => {
            const length =
              k % perNumber === 0 ? 6 : k % (perNumber / 2) === 0 ? 4.4 : unit === 'in' && k % 4 === 0 ? 3.4 : 2.2
            return (
              <g key={k}>
                <path d={`M${k * stepMm},0v${length}`} stroke="#14211f" strokeWidth={0.25} />
                {k % perNumber === 0 ? (
                  <text x={k * stepMm} y={10} fontSize={3.6} textAnchor="middle" fill="#14211f">
                    {unit === 'in' ? k / 16 : k}
                  </text>
                ) : null}
              </g>
            )
          })}
        </g>
      </g>
    </svg>
  )
}
