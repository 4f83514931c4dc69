import { useEffect, useRef } from 'react'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import { type ClassScale, edgeText } from './classScale.ts'
import type { GaugeMark } from './gaugeMark.ts'
import styles from './Legend.module.css'
import { mapColours } from './mapColours.ts'
import { paintMark } from './paintMark.ts'
import { cssOf, type Rgb } from './palettes.ts'
import type { Measure } from './useFieldImage.ts'

type Props = { measure: Measure; scale: ClassScale; amounts: ClassScale; isDark: boolean }

/** What colours and marks mean, with the unit: the classes always in sight, the marks on request. */
export function Legend({ measure, scale, amounts, isDark }: Props) {
  const { words, format } = useWords()
  const titles = {
    amount: words.legendAmount,
    uncertainty: words.legendUncertainty,
    change: words.legendChange,
    gauges: words.legendGauges,
  }
  const wet = amounts.colours[Math.floor(amounts.colours.length / 2)] ?? null
  const marks: { mark: GaugeMark; colour: Rgb | null; text: string }[] = [
    { mark: { shape: 'disc', mm: 1, doubtful: false }, colour: wet, text: words.legendWet },
    { mark: { shape: 'ring', mm: 0, doubtful: false }, colour: null, text: words.legendDry },
    { mark: { shape: 'ringWithDot', mm: 0, doubtful: false }, colour: null, text: words.legendTrace },
    { mark: { shape: 'square', mm: 1, doubtful: false }, colour: wet, text: words.legendMultiday },
    { mark: { shape: 'disc', mm: 1, doubtful: true }, colour: wet, text: words.legendDoubtful },
    { mark: { shape: 'cross', mm: null, doubtful: false }, colour: null, text: words.legendSilent },
    { mark: { shape: 'dash', mm: null, doubtful: false }, colour: null, text: words.legendAway },
    { mark: { shape: 'struck', mm: null, doubtful: false }, colour: null, text: words.legendSetAside },
  ]
  return (
    <div className={styles.legend}>
      <p className={styles.title}>{fill(titles[measure], { unit: format.unitName })}</p>
      <ol className={styles.classes}>
        {scale.colours.map((colour, i) => (
          <li key={`${scale.edgesMm[i]}`}>
            <svg className={styles.swatch} width="100%" height="11" aria-hidden="true" focusable="false">
              <rect width="100%" height="11" fill={cssOf(colour)} />
            </svg>
            {edgeText(scale, i, measure === 'change', format.bare)}
          </li>
        ))}
      </ol>
      <details className={styles.marks}>
        <summary>{words.legendMarks}</summary>
        <ul>
          {marks.map(({ mark, colour, text }) => (
            <li key={text}>
              <Mark mark={mark} colour={colour} isDark={isDark} />
              {text}
            </li>
          ))}
        </ul>
        <p>{words.legendSource}</p>
      </details>
    </div>
  )
}

function Mark({ mark, colour, isDark }: { mark: GaugeMark; colour: Rgb | null; isDark: boolean }) {
  const canvas = useRef<HTMLCanvasElement>(null)
  useEffect(() => {
    const context = canvas.current?.getContext('2d')
    if (!context) return
    context.setTransform(2, 0, 0, 2, 0, 0)
    context.clearRect(0, 0, 26, 22)
    context.beginPath()
    paintMark(context, mark, 13, 11, 5, colour, mapColours(isDark))
  })
  return <canvas ref={canvas} width={52} height={44} className={styles.mark} />
}
