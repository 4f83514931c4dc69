import { useWidth } from '../../hooks/useWidth.ts'
import { useWords } from '../../words/WordsContext.tsx'
import styles from './HabitPlots.module.css'
import type { HabitPlot } from './habitPlots.ts'

const heightPx = 46
const sidePx = 10
const middlePx = 26

type Props = { plot: HabitPlot & { kind: 'spread' } }

/** Where this gauge stands among the gauges of the network; the figures stand beneath, for all. */
export function SpreadPlot({ plot }: Props) {
  const { words } = useWords()
  const [frame, widthPx] = useWidth<HTMLElement>(380)
  const { value, low, high, network } = plot.marks
  const x = (position: number) => sidePx + (widthPx - 2 * sidePx) * position
  const [least, quarter, middle, threeQuarters, most] = network
  return (
    <figure ref={frame} className={styles.figure}>
      <p className={styles.title}>{plot.title}</p>
      <svg width={widthPx} height={heightPx} aria-hidden="true">
        <path className={styles.axis} d={`M${x(least)} ${middlePx}H${x(most)}`} />
        <rect
          className={styles.bar}
          x={x(quarter)}
          y={middlePx - 8}
          width={Math.max(2, x(threeQuarters) - x(quarter))}
          height="16"
        />
        <path className={styles.expected} d={`M${x(middle)} ${middlePx - 11}v22`} />
        <path className={styles.interval} d={`M${x(low)} ${middlePx}H${x(high)}`} />
        <path className={styles.mark} d={`M${x(value)} ${middlePx - 7}l6 7l-6 7l-6 -7z`} />
      </svg>
      <figcaption>
        {plot.text}. <span className={styles.note}>{words.gauges.spreadNote}</span>
      </figcaption>
    </figure>
  )
}
