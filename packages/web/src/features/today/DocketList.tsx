import type { DayReview, DocketRow } from '@gaugewright/contract'
import type { ReactNode } from 'react'
import { fill } from '../../words/fill.ts'
import { oddsInWords } from '../../words/oddsInWords.ts'
import { useWords } from '../../words/WordsContext.tsx'
import { DocketButton } from './DocketButton.tsx'
import styles from './DocketList.module.css'
import { RangeStrip } from './RangeStrip.tsx'
import { bestGuess, docketParts } from './todayView.ts'
import { VerdictTag } from './VerdictTag.tsx'

type Props = {
  review: DayReview
  chosenId: string | null
  /** Odds of standing before the last decision, of the readings that it moved. */
  oddsBefore: ReadonlyMap<string, number>
  onChoose: (gaugeId: string) => void
}

/** The docket: what to decide, what waits for an answer, and what was decided. */
export function DocketList({ review, chosenId, oddsBefore, onChoose }: Props) {
  const { words } = useWords()
  const { toDecide, asked, decided } = docketParts(review)
  const maxMm = review.docket.reduce((most, row) => Math.max(most, row.amountUm / 1000, row.expectedP90Mm), 1)
  const heaviest = review.docket.reduce((most, row) => Math.max(most, row.weight), 1e-9)
  const areaOf = new Map(review.roll.map((row) => [row.gaugeId, row.area]))
  const open = (row: DocketRow) => (
    <DocketButton
      key={row.readingId}
      row={{ ...row, area: areaOf.get(row.gaugeId) ?? null }}
      isChosen={row.readingId === chosenId}
      weightShare={row.decision ? 0 : Math.sqrt(row.weight / heaviest)}
      onChoose={onChoose}
    >
      <Expected row={row} maxMm={maxMm} />
      <span className={styles.guess}>
        {row.decision ? <VerdictTag decision={row.decision} /> : <Guess row={row} />}
      </span>
      <Moved before={oddsBefore.get(row.readingId)} after={row.standsOdds} />
    </DocketButton>
  )
  return (
    <div className={styles.docket} data-testid="docket">
      {toDecide.length > 0 ? (
        <Part title={words.toDecideHeading}>{toDecide.map(open)}</Part>
      ) : (
        <div className={styles.done}>
          <p>{words.nothingToDecide}</p>
          <p>{words.nothingToDecideMore}</p>
        </div>
      )}
      {asked.length > 0 ? <Part title={words.askedHeading}>{asked.map(open)}</Part> : null}
      {decided.length > 0 ? (
        <Part title={words.decidedHeading}>
          {decided.map((row) => (
            <DocketButton
              key={row.gaugeId}
              row={{ ...row, text: row.text ?? '' }}
              isChosen={row.readingId === chosenId}
              weightShare={0}
              onChoose={onChoose}
            >
              <span className={styles.guess}>
                <VerdictTag decision={row.decision!} />
              </span>
            </DocketButton>
          ))}
        </Part>
      ) : null}
    </div>
  )
}

function Part({ title, children }: { title: string; children: ReactNode }) {
  return (
    <>
      <h3 className={styles.heading}>{title}</h3>
      <ol>{children}</ol>
    </>
  )
}

function Expected({ row, maxMm }: { row: DocketRow; maxMm: number }) {
  const { words, format } = useWords()
  const { expectedP10Mm, expectedP50Mm, expectedP90Mm } = row
  const range = { low: format.bare(expectedP10Mm), high: format.mm(expectedP90Mm) }
  return (
    <span className={styles.expected}>
      <RangeStrip
        lowMm={expectedP10Mm}
        middleMm={expectedP50Mm}
        highMm={expectedP90Mm}
        typedMm={row.amountUm / 1000}
        maxMm={maxMm}
      />
      <small>{expectedP90Mm < format.stepMm / 2 ? words.expectedDry : fill(words.expectedRange, range)}</small>
    </span>
  )
}

/** What the last decision did to this reading. */
function Moved({ before, after }: { before: number | undefined; after: number }) {
  const { words, format } = useWords()
  if (before === undefined) return null
  const odds = { before: format.percentTight(before), after: format.percentTight(after) }
  return (
    <span className={styles.moved} data-testid="moved">
      <span aria-hidden="true">{after > before ? '▲ ' : '▼ '}</span>
      {fill(words.whatIf.standsWas, odds)}
    </span>
  )
}

function Guess({ row }: { row: DocketRow }) {
  const { words, format } = useWords()
  const { kind, odds } = bestGuess(row)
  const values = { odds: oddsInWords(odds, words), mistake: words.explanations[kind] }
  const { suggested, proposedUm } = row
  const offer =
    suggested === 'ask' ? (
      <b> → {words.guess.ask}</b>
    ) : suggested === 'amend' && proposedUm !== null ? (
      <b> → {format.overDays(proposedUm, false, row.proposedFirstDay, row.proposedLastDay)}</b>
    ) : null
  return (
    <>
      {fill(kind === 'stands' ? words.guess.stands : words.guess.mistake, values)}
      {offer}
    </>
  )
}
