/** @jsxRuntime automatic */
/** A small yard with places to choose from, numbered. */
import type { SiteDrill } from '@gaugewright/science'
import { PlanShapes, planFrame } from '../siting/PlanDrawing.tsx'

export function SpotsDrawing({
  drill,
  language,
  label,
  right,
  widthPx = 340,
}: {
  drill: SiteDrill
  language: 'en' | 'es'
  label: string
  right?: number | undefined
  widthPx?: number
}) {
  const frame = planFrame(drill.plan)
  const textM = (frame.widthM / widthPx) * 13
  return (
    <svg
      role="img"
      aria-label={label}
      viewBox={`${frame.westM} ${-frame.northM} ${frame.widthM} ${frame.heightM}`}
      width={widthPx}
      height={(widthPx * frame.heightM) / frame.widthM}
    >
      <PlanShapes plan={drill.plan} language={language} textM={textM} />
      {drill.spots.map(({ xM, yM }, index) => (
        <g key={`${xM} ${yM}`} transform={`translate(${xM} ${-yM})`}>
          <circle
            r={textM * 0.95}
            fill={index === right ? 'var(--good, #1f6140)' : 'var(--accent, #0b4f68)'}
            stroke="var(--panel, #fff)"
            strokeWidth={2}
            vectorEffect="non-scaling-stroke"
          />
          <text
            fontSize={textM * 1.2}
            fill="var(--accent-ink, #fff)"
            textAnchor="middle"
            dominantBaseline="central"
            fontWeight={700}
          >
            {index + 1}
          </text>
        </g>
      ))}
    </svg>
  )
}
