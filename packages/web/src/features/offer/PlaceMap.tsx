/** A small map of the basin on which a place is marked, by touch or by arrow keys. */
import type { OfferPage } from '@gaugewright/contract'
import { type GeoPermissibleObjects, geoMercator, geoPath } from 'd3-geo'
import { type KeyboardEvent, type MouseEvent, useMemo } from 'react'
import { Button } from '../../ui/Button.tsx'
import { fill } from '../../words/fill.ts'
import type { OfferWords } from '../../words/offerWords.ts'
import styles from './Offer.module.css'

type Props = {
  page: OfferPage
  place: { latDeg: number; lonDeg: number } | null
  onPlace: (place: { latDeg: number; lonDeg: number } | null) => void
  words: OfferWords
}

const [WIDTH, HEIGHT] = [600, 420]
const STEP_PX = 4

export function PlaceMap({ page, place, onPlace, words }: Props) {
  const projection = useMemo(() => {
    const [west, south, east, north] = page.bounds ?? [-10, -10, 10, 10]
    const corners = {
      type: 'MultiPoint' as const,
      coordinates: [
        [west, south],
        [east, north],
        [west, north],
        [east, south],
      ],
    }
    return geoMercator().fitExtent(
      [
        [12, 12],
        [WIDTH - 12, HEIGHT - 12],
      ],
      corners as GeoPermissibleObjects,
    )
  }, [page.bounds])
  const path = geoPath(projection)
  const put = (x: number, y: number) => {
    const at = projection.invert?.([Math.min(WIDTH, Math.max(0, x)), Math.min(HEIGHT, Math.max(0, y))])
    if (at) onPlace({ lonDeg: rounded(at[0]), latDeg: rounded(at[1]) })
  }
  const onClick = (event: MouseEvent<SVGSVGElement>) => {
    const box = event.currentTarget.getBoundingClientRect()
    put(((event.clientX - box.left) / box.width) * WIDTH, ((event.clientY - box.top) / box.height) * HEIGHT)
  }
  const onKeyDown = (event: KeyboardEvent) => {
    const step = event.shiftKey ? 5 * STEP_PX : STEP_PX
    const way = { ArrowLeft: [-step, 0], ArrowRight: [step, 0], ArrowUp: [0, -step], ArrowDown: [0, step] }[event.key]
    if (way === undefined) return
    event.preventDefault()
    const [x, y] = (place === null ? null : projection([place.lonDeg, place.latDeg])) ?? [WIDTH / 2, HEIGHT / 2]
    put(x + way[0]!, y + way[1]!)
  }
  const mark = place === null ? null : projection([place.lonDeg, place.latDeg])
  return (
    <div className={styles.map}>
      <svg
        viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
        role="application"
        aria-label={words.mapLabel}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: the mark is moved by arrow keys
        tabIndex={0}
        onClick={onClick}
        onKeyDown={onKeyDown}
      >
        {page.map.map(({ kind, name, geojson }) => (
          <path key={`${kind} ${name}`} className={styles[kind]} d={path(geojson as GeoPermissibleObjects) ?? ''} />
        ))}
        {page.places.map(({ name, latDeg, lonDeg }) => {
          const at = projection([lonDeg, latDeg])
          return at === null ? null : (
            <g key={name} transform={`translate(${at[0]} ${at[1]})`}>
              <circle r="2.5" fill="var(--ink-soft)" />
              <text x="5" y="4">
                {name}
              </text>
            </g>
          )
        })}
        {mark === null ? null : (
          <g transform={`translate(${mark[0]} ${mark[1]})`} data-testid="place-mark">
            <circle r="9" fill="none" stroke="var(--accent)" strokeWidth="3" />
            <circle r="2.5" fill="var(--accent)" />
          </g>
        )}
      </svg>
      {place === null ? null : (
        <p role="status">
          {fill(words.marked, { lat: place.latDeg.toFixed(4), lon: place.lonDeg.toFixed(4) })}{' '}
          <Button look="quiet" onClick={() => onPlace(null)}>
            {words.clearPlace}
          </Button>
        </p>
      )}
    </div>
  )
}

/** Ten metres: the house, and no finer. */
function rounded(degrees: number): number {
  return Math.round(degrees * 10_000) / 10_000
}
