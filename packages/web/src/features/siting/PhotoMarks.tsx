/** The photo with its marks: tap or arrow keys, and a glass that shows what is under the finger. */
import type { PhotoPoint } from '@gaugewright/science'
import { type KeyboardEvent, type PointerEvent, useState } from 'react'
import { Choice } from '../../ui/Choice.tsx'
import { sitingWords } from '../../words/sitingWords.ts'
import type { Opened } from './openedPhoto.ts'
import styles from './SitePage.module.css'

export type MarkName = 'top' | 'foot' | 'horizon' | 'horizon2' | 'a' | 'b'
type Marks = Partial<Record<MarkName, PhotoPoint>>

type Props = {
  photo: Opened
  marks: Marks
  asked: readonly MarkName[]
  onMarks: (marks: Marks) => void
  language: 'en' | 'es'
}

const signs: Record<MarkName, string> = { top: 'T', foot: 'F', horizon: 'H', horizon2: 'H', a: '1', b: '2' }
const GLASS = 6

export function PhotoMarks({ photo, marks, asked, onMarks, language }: Props) {
  const words = sitingWords[language].photo
  const [mark, setMark] = useState<MarkName>('top')
  const [isHeld, setIsHeld] = useState(false)
  const { widthPx, heightPx, url } = photo
  const size = widthPx / 40
  const place = (event: PointerEvent<SVGSVGElement>) => {
    // By the drawing's own scale: a tall photo is fitted into the screen and leaves room at its sides.
    const toPhoto = event.currentTarget.getScreenCTM()?.inverse()
    if (toPhoto === undefined) return
    const { x: xPx, y: yPx } = new DOMPoint(event.clientX, event.clientY).matrixTransform(toPhoto)
    onMarks({ ...marks, [mark]: inside({ xPx, yPx }, photo) })
  }
  const next = () => {
    const following = asked.find((one) => one !== mark && marks[one] === undefined)
    if (following !== undefined) setMark(following)
  }
  const onKeyDown = (event: KeyboardEvent) => {
    const step = event.shiftKey ? 10 : 1
    const way = { ArrowLeft: [-step, 0], ArrowRight: [step, 0], ArrowUp: [0, -step], ArrowDown: [0, step] }[event.key]
    if (way === undefined) return
    event.preventDefault()
    const from = marks[mark] ?? { xPx: widthPx / 2, yPx: heightPx / 2 }
    onMarks({ ...marks, [mark]: inside({ xPx: from.xPx + way[0]!, yPx: from.yPx + way[1]! }, photo) })
  }
  const under = marks[mark]
  return (
    <div>
      <Choice
        label={words.mark}
        value={mark}
        options={asked.map((value) => ({
          value,
          label: `${words.marks[value]}${marks[value] === undefined ? '' : ' ✓'}`,
        }))}
        onChange={setMark}
      />
      <p className={styles.soft}>{words.markHint}</p>
      <svg
        className={styles.photoView}
        role="application"
        aria-label={`${words.alt}: ${words.marks[mark]}`}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: marks are set by arrow keys too
        tabIndex={0}
        viewBox={`0 0 ${widthPx} ${heightPx}`}
        onPointerDown={(event) => {
          event.currentTarget.setPointerCapture(event.pointerId)
          setIsHeld(true)
          place(event)
        }}
        onPointerMove={(event) => isHeld && place(event)}
        onPointerUp={() => {
          setIsHeld(false)
          next()
        }}
        onKeyDown={onKeyDown}
      >
        <image href={url} width={widthPx} height={heightPx} />
        {(Object.entries(marks) as [MarkName, PhotoPoint][]).map(([name, { xPx, yPx }]) => (
          <g key={name} className={styles.mark} data-mark={name} transform={`translate(${xPx} ${yPx})`}>
            <path d={`M${-size},0H${-size / 5}M${size / 5},0H${size}M0,${-size}V${-size / 5}M0,${size / 5}V${size}`} />
            <text x={size * 0.5} y={-size * 0.4} fontSize={size * 0.9}>
              {signs[name]}
            </text>
          </g>
        ))}
        {isHeld && under !== undefined ? (
          <svg
            aria-hidden="true"
            x={under.xPx < widthPx / 2 ? widthPx * 0.68 : widthPx * 0.02}
            y={heightPx * 0.02}
            width={widthPx * 0.3}
            height={widthPx * 0.3}
            viewBox={`${under.xPx - (widthPx * 0.3) / GLASS / 2} ${under.yPx - (widthPx * 0.3) / GLASS / 2} ${(widthPx * 0.3) / GLASS} ${(widthPx * 0.3) / GLASS}`}
          >
            <image href={url} width={widthPx} height={heightPx} />
            <path
              className={styles.glass}
              d={`M${under.xPx - size},${under.yPx}h${2 * size}M${under.xPx},${under.yPx - size}v${2 * size}`}
            />
          </svg>
        ) : null}
      </svg>
    </div>
  )
}

function inside({ xPx, yPx }: PhotoPoint, { widthPx, heightPx }: Opened): PhotoPoint {
  return { xPx: Math.min(widthPx, Math.max(0, xPx)), yPx: Math.min(heightPx, Math.max(0, yPx)) }
}
