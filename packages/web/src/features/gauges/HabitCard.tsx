import type { GaugeHabitsAnswer, WireHabit } from '@gaugewright/contract'
import { useId } from 'react'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import { BarPlot } from './BarPlot.tsx'
import styles from './HabitCard.module.css'
import { habitPlot } from './habitPlots.ts'
import { SpreadPlot } from './SpreadPlot.tsx'

type Props = { habit: WireHabit; gauge: GaugeHabitsAnswer }

/** A habit that is told: what is seen, what may be done, and the plot that shows it. */
export function HabitCard({ habit, gauge }: Props) {
  const { words, format, language } = useWords()
  const id = useId()
  return (
    <article className={styles.card} aria-labelledby={id} data-kind={habit.kind}>
      <h3 id={id} className={styles.heading}>
        {words.gauges.kinds[habit.kind]}{' '}
        <span className={styles.sure}>{fill(words.gauges.sure, { percent: format.percent(habit.sure) })}</span>
      </h3>
      <Said language={gauge.network.language} shown={language} className={styles.sentence} text={habit.sentence} />
      <Said language={gauge.network.language} shown={language} className={styles.advice} text={habit.advice} />
      <Plot habit={habit} gauge={gauge} />
    </article>
  )
}

/** What is as usual: one line, with its plot behind it. */
export function UsualHabit({ habit, gauge }: Props) {
  const { words, language } = useWords()
  return (
    <details className={styles.usual}>
      <summary>{words.gauges.kinds[habit.kind]}</summary>
      <Said language={gauge.network.language} shown={language} className={styles.sentence} text={habit.sentence} />
      <Plot habit={habit} gauge={gauge} />
    </details>
  )
}

function Plot({ habit, gauge }: Props) {
  const { words, format } = useWords()
  const plot = habitPlot(habit, gauge, words, format)
  if (plot === null) return null
  return plot.kind === 'bars' ? <BarPlot plot={plot} /> : <SpreadPlot plot={plot} />
}

/** Text of the desk, in the network's language, marked as such where the screen speaks another. */
function Said(props: { language: string; shown: string; className: string | undefined; text: string }) {
  return (
    <p className={props.className} lang={props.language === props.shown ? undefined : props.language}>
      {props.text}
    </p>
  )
}
