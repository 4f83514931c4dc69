/** The plan on the screen: what stands there from the drawings, and over it what can be dragged, drawn and chosen. */
import {
  type LengthUnit,
  lengthText,
  type PlanFrame,
  PlanShapes,
  planFrame,
  scaleBarM,
  siteWords,
} from '@gaugewright/drawings'
import type { BestSpots, ObstacleKind, YardPlan, YardPoint } from '@gaugewright/science'
import { type KeyboardEvent, type PointerEvent, useRef, useState } from 'react'
import { sitingWords } from '../../words/sitingWords.ts'
import { HeatCells } from './HeatCells.tsx'
import { type Chosen, cornersOf, drawnObstacle, freshId, moved, round, withCornerAt, without } from './planItems.ts'
import styles from './SitePage.module.css'
import type { EditedPlan } from './usePlan.ts'

type Props = {
  edited: EditedPlan
  language: 'en' | 'es'
  unit: LengthUnit
  chosen: Chosen
  onChoose: (chosen: Chosen) => void
  /** What is being drawn with clicks; null while things are moved. */
  tool: ObstacleKind | 'outline' | null
  onToolDone: () => void
  isSnapping: boolean
  found: BestSpots | null
  ringM: number
}

const WIDTH_PX = 760
type Drag = { chosen: Chosen; corner: number | null; from: YardPoint; plan: YardPlan; frame: PlanFrame }

export function PlanCanvas({
  edited,
  language,
  unit,
  chosen,
  onChoose,
  tool,
  onToolDone,
  isSnapping,
  found,
  ringM,
}: Props) {
  const words = sitingWords[language]
  const { plan } = edited
  const svg = useRef<SVGSVGElement>(null)
  const [drag, setDrag] = useState<Drag | null>(null)
  const [corners, setCorners] = useState<readonly YardPoint[]>([])
  const frame = drag?.frame ?? planFrame(plan, 20)
  const textM = (frame.widthM / WIDTH_PX) * 13

  const pointAt = (event: { clientX: number; clientY: number; altKey: boolean }): YardPoint => {
    const matrix = svg.current?.getScreenCTM()
    if (!matrix) return { xM: 0, yM: 0 }
    const at = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix.inverse())
    return snapped({ xM: at.x, yM: -at.y }, isSnapping && !event.altKey)
  }
  const finish = (points: readonly YardPoint[]) => {
    if (tool === 'outline' && points.length >= 3) edited.set({ ...plan, outline: points })
    else if (tool !== null && tool !== 'outline' && points.length >= 1) {
      const id = freshId(plan)
      edited.set({ ...plan, obstacles: [...plan.obstacles, drawnObstacle(id, tool, points)] })
      onChoose({ kind: 'obstacle', id })
    }
    setCorners([])
    onToolDone()
  }
  const onPointerDown = (event: PointerEvent) => {
    if (event.button !== 0) return
    const at = pointAt(event)
    svg.current?.focus()
    if (tool !== null) {
      const first = corners[0]
      const closes = first !== undefined && corners.length > 1 && Math.hypot(first.xM - at.xM, first.yM - at.yM) < textM
      if (closes) finish(corners)
      else setCorners([...corners, at])
      return
    }
    const target = event.target as Element
    const handle = target.closest('[data-corner]')?.getAttribute('data-corner')
    const grabbed = handle === null || handle === undefined ? grabbedBy(target) : chosen
    onChoose(grabbed)
    if (grabbed === null || grabbed.kind === 'outline') {
      if (handle === null || handle === undefined) return
    }
    svg.current?.setPointerCapture(event.pointerId)
    const corner = handle === null || handle === undefined ? null : Number(handle)
    setDrag({ chosen: grabbed, corner, from: at, plan, frame })
  }
  const onPointerMove = (event: PointerEvent) => {
    if (drag === null) return
    const at = pointAt(event)
    const next =
      drag.corner === null
        ? moved(drag.plan, drag.chosen, at.xM - drag.from.xM, at.yM - drag.from.yM)
        : withCornerAt(drag.plan, drag.chosen, drag.corner, at)
    edited.set(next, 'drag')
  }
  const onPointerUp = () => {
    setDrag(null)
    edited.endStroke()
  }
  const onKeyDown = (event: KeyboardEvent) => {
    if (tool !== null) {
      if (event.key === 'Enter') finish(corners)
      else if (event.key === 'Escape') {
        setCorners([])
        onToolDone()
      } else return
      event.preventDefault()
      return
    }
    const step = event.shiftKey ? 0.1 : 0.5
    const way = { ArrowLeft: [-step, 0], ArrowRight: [step, 0], ArrowUp: [0, step], ArrowDown: [0, -step] }[event.key]
    if (way !== undefined) {
      edited.set(moved(plan, chosen ?? { kind: 'gauge' }, way[0]!, way[1]!), 'keys')
      event.preventDefault()
    } else if ((event.key === 'Delete' || event.key === 'Backspace') && chosen !== null) {
      edited.set(without(plan, chosen))
      onChoose(null)
      event.preventDefault()
    }
  }
  const obstacle = chosen?.kind === 'obstacle' ? plan.obstacles.find(({ id }) => id === chosen.id) : undefined
  const handles =
    tool !== null ? [] : chosen?.kind === 'outline' ? plan.outline : obstacle === undefined ? [] : handlesOf(obstacle)
  const barM = scaleBarM(frame, unit)
  const left = frame.westM + textM
  const bottom = -frame.northM + frame.heightM - textM
  return (
    <svg
      ref={svg}
      className={styles.canvas}
      data-tool={tool ?? 'move'}
      role="application"
      aria-label={words.canvas}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: the plan takes arrow keys; all it does can be typed beside it too
      tabIndex={0}
      viewBox={`${frame.westM} ${-frame.northM} ${frame.widthM} ${frame.heightM}`}
      onPointerDown={onPointerDown}
      onPointerMove={onPointerMove}
      onPointerUp={onPointerUp}
      onPointerCancel={onPointerUp}
      onKeyDown={onKeyDown}
    >
      {found === null ? null : <HeatCells grid={found.grid} />}
      <Grid frame={frame} />
      <g opacity={found === null ? 1 : 0.85}>
        <PlanShapes
          plan={found === null ? plan : { ...plan, outline: [] }}
          language={language}
          textM={textM}
          selectedId={chosen !== null && 'id' in chosen ? chosen.id : null}
        />
      </g>
      <Grabs plan={plan} textM={textM} />
      {plan.gauge === null ? null : (
        <g className={styles.rings} transform={`translate(${plan.gauge.at.xM} ${-plan.gauge.at.yM})`}>
          <circle r={2 * ringM} strokeDasharray="7 4" />
          <circle r={ringM} strokeDasharray="2 3" />
          <text y={-2 * ringM - textM * 0.3} fontSize={textM}>
            26.6°
          </text>
          <text y={-ringM - textM * 0.3} fontSize={textM}>
            45°
          </text>
        </g>
      )}
      {found?.spots.map((spot, index) => (
        <g
          key={`${spot.at.xM} ${spot.at.yM}`}
          className={styles.spot}
          transform={`translate(${spot.at.xM} ${-spot.at.yM})`}
        >
          <circle r={textM * 0.85} />
          <text fontSize={textM * 1.1} dominantBaseline="central">
            {index + 1}
          </text>
        </g>
      ))}
      {handles.map((at, index) => (
        <rect
          // biome-ignore lint/suspicious/noArrayIndexKey: a corner is its place in the ring
          key={index}
          data-corner={index}
          className={styles.handle}
          x={at.xM - textM * 0.5}
          y={-at.yM - textM * 0.5}
          width={textM}
          height={textM}
        />
      ))}
      {corners.length === 0 ? null : (
        <g className={styles.drawn}>
          <path d={`M${corners.map(({ xM, yM }) => `${xM},${-yM}`).join('L')}`} />
          {corners.map(({ xM, yM }, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a corner is its place in the line
            <circle key={index} cx={xM} cy={-yM} r={textM * 0.4} />
          ))}
        </g>
      )}
      <g className={styles.bar}>
        <path
          d={`M${left},${bottom}h${barM}m${-barM},${-textM * 0.4}v${textM * 0.8}m${barM},${-textM * 0.8}v${textM * 0.8}`}
        />
        <text x={left + barM + textM * 0.5} y={bottom} fontSize={textM} dominantBaseline="central">
          {lengthText(barM, unit, language)} · {siteWords[language].compass[0]} ↑
        </text>
      </g>
    </svg>
  )
}

/** Lines each metre, where there is room for them. */
function Grid({ frame }: { frame: PlanFrame }) {
  const step = frame.widthM > 80 ? 10 : frame.widthM > 40 ? 5 : 1
  const south = frame.northM - frame.heightM
  const columns = Array.from(
    { length: Math.ceil(frame.widthM / step) + 1 },
    (_, k) => (Math.ceil(frame.westM / step) + k) * step,
  )
  const rows = Array.from(
    { length: Math.ceil(frame.heightM / step) + 1 },
    (_, k) => (Math.ceil(south / step) + k) * step,
  )
  const d = [
    ...columns.map((xM) => `M${xM},${-frame.northM}V${-south}`),
    ...rows.map((yM) => `M${frame.westM},${-yM}H${frame.westM + frame.widthM}`),
  ].join('')
  return <path className={styles.grid} d={d} />
}

/** Unseen, and wide enough for a thumb. */
function Grabs({ plan, textM }: { plan: YardPlan; textM: number }) {
  const line = (points: readonly YardPoint[], isClosed: boolean) =>
    `M${points.map(({ xM, yM }) => `${xM},${-yM}`).join('L')}${isClosed ? 'Z' : ''}`
  return (
    <g className={styles.grabs}>
      {plan.outline.length > 1 ? (
        <path data-grab="outline" className={styles.grabLine} d={line(plan.outline, true)} />
      ) : null}
      {plan.obstacles.map((one) => {
        const { shape } = one
        if (shape.form === 'round') {
          return (
            <circle
              key={one.id}
              data-grab={`obstacle ${one.id}`}
              cx={shape.center.xM}
              cy={-shape.center.yM}
              r={Math.max(shape.radiusM, textM)}
            />
          )
        }
        if (shape.form === 'line')
          return (
            <path
              key={one.id}
              data-grab={`obstacle ${one.id}`}
              className={styles.grabLine}
              d={line(shape.points, false)}
            />
          )
        if (shape.form === 'bearing') return null
        return <path key={one.id} data-grab={`obstacle ${one.id}`} d={line(shape.ring, true)} />
      })}
      {plan.hazards.map(({ id, at }) => (
        <circle key={id} data-grab={`hazard ${id}`} cx={at.xM} cy={-at.yM} r={textM * 1.2} />
      ))}
      {plan.gauge === null ? null : (
        <circle data-grab="gauge" cx={plan.gauge.at.xM} cy={-plan.gauge.at.yM} r={textM * 1.6} />
      )}
    </g>
  )
}

function grabbedBy(target: Element): Chosen {
  const grab = target.closest('[data-grab]')?.getAttribute('data-grab')
  if (grab === null || grab === undefined) return null
  if (grab === 'gauge' || grab === 'outline') return { kind: grab }
  const space = grab.indexOf(' ')
  return { kind: grab.slice(0, space) as 'obstacle' | 'hazard', id: grab.slice(space + 1) }
}

function handlesOf(obstacle: YardPlan['obstacles'][number]): readonly YardPoint[] {
  return obstacle.shape.form === 'round' || obstacle.shape.form === 'bearing' ? [] : cornersOf(obstacle)
}

function snapped({ xM, yM }: YardPoint, isSnapping: boolean): YardPoint {
  const to = (value: number) => (isSnapping ? Math.round(value * 2) / 2 : round(value))
  return { xM: to(xM), yM: to(yM) }
}
