import type { UrgentItem, UrgentKind } from '@gaugewright/contract'

/** Outlines within a square of 20 around 0, 0: hail a circle, rain a drop, flooding waves, wind a pennant, snow a star. */
const outlines: Record<UrgentKind, string> = {
  hail: 'M0-8A8 8 0 1 1 0 8A8 8 0 1 1 0-8Z',
  rain: 'M0-9C4-3 7 0 7 3A7 6 0 0 1-7 3C-7 0-4-3 0-9Z',
  flooding: 'M-9 7V-3Q-6-7-3-3T3-3T9-3V7Z',
  wind: 'M-8 9V-9L9-3L-5 3V9Z',
  snow: 'M0-9L2.5-3.5L8-5L5 0L8 5L2.5 3.5L0 9L-2.5 3.5L-8 5L-5 0L-8-5L-2.5-3.5Z',
}

/** How each level is drawn: filled and ringed, filled, half, empty. Shape and fill tell without colour. */
export function KindShape({
  kind,
  level,
  scale = 1,
}: {
  kind: UrgentKind
  level: UrgentItem['severity']['level']
  scale?: number
}) {
  const path = outlines[kind]
  const colour = level === 'significant' ? 'var(--fail)' : level === 'severe' ? 'var(--doubt)' : 'var(--ink-soft)'
  return (
    <g transform={`scale(${scale})`}>
      {level === 'significant' ? (
        <path d={path} transform="scale(1.45)" fill="none" stroke={colour} strokeWidth="1.6" />
      ) : null}
      <path
        d={path}
        fill={level === 'below' ? 'var(--raised)' : colour}
        fillOpacity={level === 'near' ? 0.35 : 1}
        stroke={colour}
        strokeWidth="1.8"
      />
    </g>
  )
}

export function KindMark({ kind, level }: { kind: UrgentKind; level: UrgentItem['severity']['level'] }) {
  return (
    <svg viewBox="-15 -15 30 30" width="30" height="30" aria-hidden="true" focusable="false">
      <KindShape kind={kind} level={level} />
    </svg>
  )
}
