/** The picture of a drill; of a gauge the whole tube and a closer look; in words for whoever prefers them. */
import { GaugeTube, HailDrawing, SpotsDrawing } from '@gaugewright/drawings'
import { apparentUm, type Drill, formatAmount, type GaugeDrill } from '@gaugewright/science'
import { drillWords } from '../../words/drillWords.ts'
import { fill } from '../../words/fill.ts'
import styles from './DrillPage.module.css'

type Props = { drill: Exclude<Drill, { kind: 'choice' }>; fillAt: number; language: 'en' | 'es'; showAnswer?: boolean }

export function DrillPicture({ drill, fillAt, language, showAnswer = false }: Props) {
  const words = drillWords[language]
  if (drill.kind === 'hail') return <HailDrawing drill={drill} label={words.askHail} />
  if (drill.kind === 'site')
    return (
      <SpotsDrawing
        drill={drill}
        language={language}
        label={words.askSite}
        right={showAnswer ? drill.right : undefined}
      />
    )
  return (
    <div>
      <div className={styles.tubes}>
        <figure>
          <GaugeTube drill={drill} fill={fillAt} label={words.drawing} showAnswer={showAnswer} />
          <figcaption>{words.whole}</figcaption>
        </figure>
        <figure data-testid="close-tube">
          <GaugeTube drill={drill} fill={fillAt} label={words.drawing} showAnswer={showAnswer} isClose />
          <figcaption>{words.close}</figcaption>
        </figure>
      </div>
      <details>
        <summary>{words.described}</summary>
        <p>{inWords(drill, fillAt, language)}</p>
      </details>
    </div>
  )
}

/** What is seen, without the answer: marks are counted from the long one below. */
function inWords(drill: GaugeDrill, fillAt: number, language: 'en' | 'es'): string {
  const words = drillWords[language]
  if (drill.drops !== 'none') return words.describedDrops[drill.drops]
  const { stepUm, unit, eyeDeg } = drill
  const levelUm = drill.fillsUm[fillAt] ?? 0
  const perLong = (unit === 'in' ? 10 : 5) * stepUm
  const amount = (um: number) => formatAmount({ amountUm: um, isTrace: false }, unit, language, 'full')
  if (eyeDeg !== 0) {
    const seenUm = Math.round(apparentUm(drill, levelUm) / stepUm) * stepUm
    const way = eyeDeg > 0 ? words.describedEye.above : words.describedEye.below
    return `${way} ${fill(words.describedEyeSeen, { seen: amount(seenUm), angle: String(Math.abs(eyeDeg)) })}`
  }
  const baseUm = Math.floor(levelUm / perLong) * perLong
  return fill(words.describedLevel, { marks: Math.round((levelUm - baseUm) / stepUm), base: amount(baseUm) })
}
