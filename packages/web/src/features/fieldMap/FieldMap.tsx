import type { DayField, RollRow, WhatIf } from '@gaugewright/contract'
import { useQuery } from '@tanstack/react-query'
import { type KeyboardEvent, useEffect, useMemo, useRef, useState } from 'react'
import { layersQuery } from '../../api/queries.ts'
import { useIsDark } from '../../hooks/useIsDark.ts'
import { Button } from '../../ui/Button.tsx'
import { Choice } from '../../ui/Choice.tsx'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import { boundsOfLayers, makeBaseMap } from './baseMap.ts'
import styles from './FieldMap.module.css'
import { gaugeMark } from './gaugeMark.ts'
import { isohyetPaths } from './isohyetPaths.ts'
import { Legend } from './Legend.tsx'
import { mapColours } from './mapColours.ts'
import { boundsOf, makeFrame, nearestPoint, nextPointToward } from './mapFrame.ts'
import { paintMap } from './paintMap.ts'
import type { Scene } from './scene.ts'
import { type Measure, measures, scaleOf, useFieldImage, valuesOf } from './useFieldImage.ts'
import { moveByKey, useMapView } from './useMapView.ts'

export type FieldMapProps = {
  day: string
  roll: readonly RollRow[]
  doubtful: ReadonlySet<string>
  field: DayField | null
  change: WhatIf | null
  chosenGaugeId: string | null
  hoveredGaugeId: string | null
  neighbours: readonly { gaugeId: string; weight: number }[]
  measure: Measure
  onMeasure: (measure: Measure) => void
  isohyets: boolean
  onIsohyets: (shown: boolean) => void
  onChoose: (gaugeId: string) => void
}

export function FieldMap(props: FieldMapProps) {
  const { roll, doubtful, field, change, measure, chosenGaugeId } = props
  const { words, format } = useWords()
  const isDark = useIsDark()
  const layers = useQuery(layersQuery)
  const surface = useRef<HTMLDivElement>(null)
  const canvas = useRef<HTMLCanvasElement>(null)
  const [hovered, setHovered] = useState(-1)

  const gaugesKey = roll.map((row) => `${row.gaugeId}:${row.latDeg}:${row.lonDeg}`).join()
  // biome-ignore lint/correctness/useExhaustiveDependencies: the frame follows the gauges' places, not each new review
  const frame = useMemo(() => makeFrame(boundsOfLayers(layers.data) ?? boundsOf(roll)), [layers.data, gaugesKey])
  const base = useMemo(() => makeBaseMap(layers.data, frame), [layers.data, frame])
  const world = useMemo(() => Float64Array.from(roll.flatMap((r) => frame.project(r.lonDeg, r.latDeg))), [roll, frame])
  const marks = useMemo(
    () => roll.map((row) => gaugeMark(row, row.readingId !== null && doubtful.has(row.readingId))),
    [roll, doubtful],
  )
  const largestMm = marks.reduce((most, mark) => Math.max(most, mark.mm ?? 0), 0)
  const amounts = useMemo(
    () => scaleOf('amount', field, largestMm, format.unit, isDark),
    [field, largestMm, format.unit, isDark],
  )
  const scale = useMemo(
    () =>
      measure === 'amount' || measure === 'gauges' ? amounts : scaleOf(measure, field, largestMm, format.unit, isDark),
    [measure, amounts, field, largestMm, format.unit, isDark],
  )
  const values = useMemo(() => valuesOf(measure, field, change), [measure, field, change])
  const grid = measure === 'change' ? (change?.after ?? null) : field
  const image = useFieldImage(grid, values, scale, frame)
  const lines = useMemo(
    () => (props.isohyets && field && measure !== 'change' ? isohyetPaths(field.isohyets, frame, format.bare) : []),
    [props.isohyets, field, measure, frame, format],
  )
  const indexOf = useMemo(() => new Map(roll.map((row, i) => [row.gaugeId, i])), [roll])
  const heaviest = props.neighbours.reduce((most, n) => Math.max(most, n.weight), 1e-9)
  const fromList = props.hoveredGaugeId === null ? -1 : (indexOf.get(props.hoveredGaugeId) ?? -1)

  const choose = (i: number) => {
    const row = roll[i]
    if (row) props.onChoose(row.gaugeId)
  }
  const at = (xPx: number, yPx: number, reachPx: number) => nearestPoint(world, view, xPx, yPx, reachPx)
  const { view, size, zoom, pan, showAll, reveal, handlers } = useMapView(
    surface,
    frame,
    (xPx, yPx) => choose(at(xPx, yPx, 22)),
    (xPx, yPx) => setHovered(at(xPx, yPx, 14)),
  )
  const chosen = chosenGaugeId === null ? -1 : (indexOf.get(chosenGaugeId) ?? -1)
  const chosenX = chosen >= 0 ? world[chosen * 2]! : null
  const chosenY = chosen >= 0 ? world[chosen * 2 + 1]! : null
  useEffect(() => {
    if (chosenX !== null && chosenY !== null) reveal(chosenX, chosenY)
  }, [chosenX, chosenY, reveal])

  const scene: Scene = {
    frame,
    base,
    field: image,
    isohyets: lines,
    world,
    marks,
    chosen,
    hovered: hovered >= 0 ? hovered : fromList,
    colours: marks.map(({ mm }) => (mm === null ? null : (amounts.colours[amounts.classOf(mm)] ?? null))),
    neighbours: props.neighbours.flatMap((n) => {
      const i = indexOf.get(n.gaugeId)
      return i === undefined ? [] : [{ at: i, weight: n.weight / heaviest }]
    }),
    names: roll.map((row) => row.name),
  }
  const painted = useRef(scene)
  painted.current = scene
  useEffect(() => {
    const request = requestAnimationFrame(() => {
      const element = canvas.current
      const context = element?.getContext('2d', { alpha: false })
      if (!element || !context) return
      const ratio = Math.min(2, window.devicePixelRatio || 1)
      const width = Math.round(size.widthPx * ratio)
      const height = Math.round(size.heightPx * ratio)
      if (element.width !== width || element.height !== height) {
        element.width = width
        element.height = height
      }
      paintMap(context, painted.current, view, size, ratio, mapColours(isDark))
    })
    return () => cancelAnimationFrame(request)
  })

  const onKeyDown = (event: KeyboardEvent) => {
    const toward = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }[event.key]
    if (event.shiftKey && toward) {
      const from = hovered >= 0 ? hovered : Math.max(0, chosen)
      const next = nextPointToward(world, from, toward[0]!, toward[1]!)
      if (next >= 0) {
        setHovered(next)
        reveal(world[next * 2]!, world[next * 2 + 1]!)
      }
    } else if (event.key === 'Enter' && hovered >= 0) choose(hovered)
    else if (!moveByKey(event, { pan, zoom, showAll })) return
    event.preventDefault()
    event.stopPropagation()
  }
  const card = hovered >= 0 ? roll[hovered] : undefined
  return (
    <div className={styles.map}>
      <div className={styles.tools}>
        <Choice
          label={words.measure}
          labelHidden
          value={measure}
          options={measures.map((value) => ({
            value,
            label: words.measures[value],
            disabled: value === 'change' && !change,
          }))}
          onChange={props.onMeasure}
        />
        <label className={styles.toggle}>
          <input
            type="checkbox"
            checked={props.isohyets}
            onChange={(event) => props.onIsohyets(event.target.checked)}
          />
          {words.isohyets}
        </label>
      </div>
      <div className={styles.frame}>
        <div
          ref={surface}
          id="map-surface"
          role="application"
          // biome-ignore lint/a11y/noNoninteractiveTabindex: the map is moved by keys while it has the focus
          tabIndex={0}
          className={styles.surface}
          aria-label={fill(words.mapLabel, { day: format.dayLong(props.day) })}
          aria-describedby="map-help"
          data-gauges={roll.length}
          data-scale={view.scale.toFixed(4)}
          data-x={view.xPx.toFixed(1)}
          onKeyDown={onKeyDown}
          {...handlers}
        >
          <canvas ref={canvas} className={styles.canvas} />
        </div>
        <p id="map-help" className="sr-only">
          {words.mapHelp}
        </p>
        <div className={styles.zoom}>
          <Button look="icon" aria-label={words.zoomIn} onClick={() => zoom(1.5)}>
            +
          </Button>
          <Button look="icon" aria-label={words.zoomOut} onClick={() => zoom(1 / 1.5)}>
            −
          </Button>
          <Button look="icon" aria-label={words.zoomAll} onClick={showAll}>
            ⤢
          </Button>
        </div>
        <p className={styles.card} aria-live="polite" hidden={!card}>
          {card ? (
            <>
              <strong>{card.name}</strong> <span>{card.code}</span>{' '}
              {card.amountUm === null
                ? words.answers[card.answer]
                : format.amount(card.acceptedUm ?? card.amountUm, card.isTrace)}
            </>
          ) : null}
        </p>
        {!field && measure !== 'gauges' && values === null ? (
          <p className={styles.waiting}>{words.fieldWaiting}</p>
        ) : null}
      </div>
      <Legend measure={measure} scale={scale} amounts={amounts} isDark={isDark} />
    </div>
  )
}
