import type { UrgentItem, WireStorm } from '@gaugewright/contract'
import { useQuery } from '@tanstack/react-query'
import { useMemo } from 'react'
import { layersQuery } from '../../api/queries.ts'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import { KindShape } from './KindMark.tsx'
import styles from './UrgentMapView.module.css'
import { urgentMapOf } from './urgentMapView.ts'

type Props = {
  items: readonly UrgentItem[]
  storms: readonly WireStorm[]
  shownId: string | null
  onGo: (id: string) => void
}

/** Reports by kind and level, storms with the way they go. For the mouse; the keyboard has the list, which tells the same. */
export function UrgentMapView({ items, storms, shownId, onGo }: Props) {
  const { words } = useWords()
  const layers = useQuery(layersQuery)
  const map = useMemo(() => urgentMapOf(items, storms, layers.data?.layers ?? []), [items, storms, layers.data])
  const { box } = map
  // Marks keep their size on the screen whatever the network's extent: about 500 px across.
  const px = Math.max(box.width, box.height) / 500
  const label = `${words.urgent.map}. ${fill(words.urgent.mapSummary, { count: items.length, storms: storms.length })}`
  return (
    <figure className={styles.map}>
      <svg
        viewBox={`${box.x} ${box.y} ${box.width} ${box.height}`}
        role="img"
        aria-label={label}
        data-testid="urgent-map"
      >
        {map.base.map(({ kind, path }) => (
          <path key={path} d={path} className={styles[kind]} strokeWidth={(kind === 'river' ? 0.8 : 1.2) * px} />
        ))}
        {map.towns.map(({ name, x, y }) => (
          <text key={name} x={x} y={y} className={styles.town} style={{ fontSize: `calc(${px}px * var(--town))` }}>
            {name}
          </text>
        ))}
        {map.storms.map(({ id, line, cone, head }) => (
          <g key={id} data-storm={id}>
            {cone === null ? null : <path d={cone} className={styles.cone} strokeWidth={px} />}
            <path d={line} className={styles.track} strokeWidth={3 * px} />
            {head === null ? null : (
              <path
                d="M0-9L6 5L0 1L-6 5Z"
                className={styles.head}
                transform={`translate(${head.x} ${head.y}) rotate(${head.towardDeg}) scale(${1.4 * px})`}
              />
            )}
          </g>
        ))}
        {map.reports.map(({ item, x, y }) => (
          // biome-ignore lint/a11y/noStaticElementInteractions: a way for the mouse; the list has the same by keyboard
          <g
            key={item.report.id}
            transform={`translate(${x} ${y}) scale(${px})`}
            className={styles.report}
            data-closed={item.state === 'closed'}
            onClick={() => onGo(item.report.id)}
          >
            {item.report.id === shownId ? <circle r="17" className={styles.chosen} /> : null}
            <KindShape kind={item.report.seen.kind} level={item.severity.level} />
          </g>
        ))}
      </svg>
      {storms.some(({ track }) => track !== null) ? <figcaption>{words.urgent.mapTrack}</figcaption> : null}
    </figure>
  )
}
