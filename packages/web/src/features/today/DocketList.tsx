import type { DayReview, DocketRow } from '@gaugewright/contract'
import { useEffect, useRef } from 'react'
import { fill } from '../../words/fill.ts'
import { oddsInWords } from '../../words/oddsInWords.ts'
import { useWords } from '../../words/WordsContext.tsx'
import styles from './DocketList.module.css'
import { RangeStrip } from './RangeStrip.tsx'
import { docketParts } from './todayView.ts'
import { VerdictTag } from './VerdictTag.tsx'

type Props = { review: DayReview; chosenId: string | null; onChoose: (gaugeId: string) => void }

export function DocketList({ review, chosenId, onChoose }: Props) {
  const { words } = useWords()
  const { toDecide, decided } = docketParts(review)
  const maxMm = review.docket.reduce((most, row) => Math.max(most, row.amountUm / 1000, row.expectedP90Mm), 1)
  const heaviest = review.docket.reduce((most, row) => Math.max(most, row.weight), 1e-9)
  const item = (row: DocketRow) => (
    <DocketItem
      key={row.readingId}
      row={row}
      area={review.roll.find((r) => r.gaugeId === row.gaugeId)?.area ?? null}
      maxMm={maxMm}
      weightShare={Math.sqrt(row.weight / heaviest)}
      isChosen={row.readingId === chosenId}
      onChoose={onChoose}
    />
  )
  return (
    <div className={styles.docket} data-testid="docket">
      {toDecide.length > 0 ? (
        <>
          <h3 className={styles.heading}>{words.toDecideHeading}</h3>
          <ol>{toDecide.map(item)}</ol>
        </>
      ) : (
        <div className={styles.done}>
          <p>{words.nothingToDecide}</p>
          <p>{words.nothingToDecideMore}</p>
        </div>
      )}
      {decided.length > 0 ? (
        <>
          <h3 className={styles.heading}>{words.decidedHeading}</h3>
          <ol>{decided.map(item)}</ol>
        </>
      ) : null}
    </div>
  )
}

type ItemProps = {
  row: DocketRow
  area: string | null
  maxMm: number
  weightShare: number
  isChosen: boolean
  onChoose: (gaugeId: string) => void
}

function DocketItem({ row, area, maxMm, weightShare, isChosen, onChoose }: ItemProps) {
  const { words, format } = useWords()
  const button = useRef<HTMLButtonElement>(null)
  useEffect(() => {
    const element = button.current
    if (!isChosen || !element) return
    element.scrollIntoView({ block: 'nearest' })
    const active = document.activeElement
    if (active && active !== element && element.closest('ol')?.parentElement?.contains(active))
      element.focus({ preventScroll: true })
  }, [isChosen])
  const dry = row.expectedP90Mm < format.stepMm
  return (
    <li>
      <button
        ref={button}
        type="button"
        className={`${styles.row} ${row.decision ? styles.decided : ''}`}
        aria-current={isChosen ? 'true' : undefined}
        onClick={() => onChoose(row.gaugeId)}
      >
        <span className={styles.weight} style={{ '--share': weightShare } as never} aria-hidden="true" />
        <span className={styles.who}>
          <strong>{row.name}</strong>
          <small>
            <code>{row.code}</code> {area}
          </small>
        </span>
        <span className={styles.typed}>
          <span className="sr-only">{words.typed} </span>
          <q>{row.text}</q>
        </span>
        <span className={styles.expected}>
          <RangeStrip
            lowMm={row.expectedP10Mm}
            middleMm={row.expectedP50Mm}
            highMm={row.expectedP90Mm}
            typedMm={row.amountUm / 1000}
            maxMm={maxMm}
          />
          <small>
            {dry
              ? words.expectedDry
              : fill(words.expectedRange, { low: format.bare(row.expectedP10Mm), high: format.mm(row.expectedP90Mm) })}
          </small>
        </span>
        <span className={styles.guess}>
          {row.decision ? <VerdictTag decision={row.decision} /> : <Guess row={row} />}
        </span>
      </button>
    </li>
  )
}

function Guess({ row }: { row: DocketRow }) {
  const { words, format } = useWords()
  const odds = oddsInWords(row.likeliestOdds, words)
  const text =
    row.likeliest === 'stands'
      ? fill(words.guess.stands, { odds })
      : fill(words.guess.mistake, { odds, mistake: words.explanations[row.likeliest] })
  return (
    <>
      {text}
      {row.proposedUm === null || row.proposedUm === row.amountUm ? null : <b> → {format.um(row.proposedUm)}</b>}
    </>
  )
}
