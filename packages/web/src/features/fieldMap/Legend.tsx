import { useEffect, useRef } from 'react'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import type { ClassScale } from './classScale.ts'
import type { GaugeMark } from './gaugeMark.ts'
import styles from './Legend.module.css'
import { mapColours } from './mapColours.ts'
import { paintMark } from './paintMark.ts'
import { cssOf, type Rgb } from './palettes.ts'
import type { Measure } from './useFieldImage.ts'

type Props = { measure: Measure; scale: ClassScale; isDark: boolean; open: boolean; onToggle: (open: boolean) => void }

export function Legend({ measure, scale, isDark, open, onToggle }: Props) {
  const { words, format } = useWords()
  const titles = {
    amount: words.legendAmount,
    uncertainty: words.legendUncertainty,
    change: words.legendChange,
    gauges: words.legendGauges,
  }
  return (
    <details className={styles.legend} open={open} onToggle={(event) => onToggle(event.currentTarget.open)}>
      <summary>{fill(titles[measure], { unit: format.unitName })}</summary>
      <ol className={styles.classes}>
        {scale.colours.map((colour, i) => (
          <li key={`${scale.edgesMm[i]}`}>
            <Swatch colour={colour} />
            <span>{edgeText(scale, i, measure, format.bare)}</span>
          </li>
        ))}
      </ol>
      <ul className={styles.marks}>
        <MarkRow
          mark={{ shape: 'disc', mm: 1, doubtful: false }}
          colour={scale.colours.at(-2) ?? null}
          isDark={isDark}
          text={words.legendWet}
        />
        <MarkRow
          mark={{ shape: 'ring', mm: 0, doubtful: false }}
          colour={null}
          isDark={isDark}
          text={words.legendDry}
        />
        <MarkRow
          mark={{ shape: 'ringWithDot', mm: 0, doubtful: false }}
          colour={null}
          isDark={isDark}
          text={words.legendTrace}
        />
        <MarkRow
          mark={{ shape: 'square', mm: 1, doubtful: false }}
          colour={scale.colours.at(-2) ?? null}
          isDark={isDark}
          text={words.legendMultiday}
        />
        <MarkRow
          mark={{ shape: 'disc', mm: 1, doubtful: true }}
          colour={scale.colours.at(-2) ?? null}
          isDark={isDark}
          text={words.legendDoubtful}
        />
        <MarkRow
          mark={{ shape: 'cross', mm: null, doubtful: false }}
          colour={null}
          isDark={isDark}
          text={words.legendSilent}
        />
        <MarkRow
          mark={{ shape: 'dash', mm: null, doubtful: false }}
          colour={null}
          isDark={isDark}
          text={words.legendAway}
        />
        <MarkRow
          mark={{ shape: 'struck', mm: null, doubtful: false }}
          colour={null}
          isDark={isDark}
          text={words.legendSetAside}
        />
      </ul>
      <p className={styles.source}>{words.legendSource}</p>
    </details>
  )
}

/** Class i from its edge to the next; the outermost classes are open. */
function edgeText(scale: ClassScale, i: number, measure: Measure, bare: (mm: number) => string): string {
  const edges = scale.edgesMm
  if (measure !== 'change')
    return i + 1 < edges.length ? `${bare(edges[i]!)}–${bare(edges[i + 1]!)}` : `≥ ${bare(edges[i]!)}`
  const half = edges.length / 2
  const low = i < half ? edges[i - 1] : edges[i]
  const high = i < half ? edges[i] : edges[i + 1]
  const signed = (mm: number) => (mm > 0 ? `+${bare(mm)}` : `−${bare(-mm)}`)
  if (low === undefined) return `≤ ${signed(high!)}`
  if (high === undefined) return `≥ ${signed(low)}`
  return i < half ? `${signed(low)} … ${signed(high)}` : `${signed(low)} … ${signed(high)}`
}

function Swatch({ colour }: { colour: Rgb }) {
  return (
    <svg className={styles.swatch} width="22" height="14" aria-hidden="true">
      <rect width="22" height="14" fill={cssOf(colour)} />
    </svg>
  )
}

function MarkRow({
  mark,
  colour,
  isDark,
  text,
}: {
  mark: GaugeMark
  colour: Rgb | null
  isDark: boolean
  text: string
}) {
  const canvas = useRef<HTMLCanvasElement>(null)
  useEffect(() => {
    const context = canvas.current?.getContext('2d')
    if (!context) return
    context.setTransform(2, 0, 0, 2, 0, 0)
    context.clearRect(0, 0, 26, 22)
    context.beginPath()
    paintMark(context, mark, 13, 11, 5, colour, mapColours(isDark))
  })
  return (
    <li>
      <canvas ref={canvas} width={52} height={44} className={styles.mark} aria-hidden="true" />
      <span>{text}</span>
    </li>
  )
}
