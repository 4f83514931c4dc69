import type { DayEvidence, DayReview, Problem, WireDecision } from '@gaugewright/contract'
import { type ComponentProps, type ReactNode, useId } from 'react'
import { Notice } from '../../ui/Notice.tsx'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import { AllowedForLine } from './AllowedForLine.tsx'
import { AreaTable } from './AreaTable.tsx'
import { DaysAroundChart } from './DaysAroundChart.tsx'
import { DecisionHistory } from './DecisionHistory.tsx'
import styles from './EvidencePanel.module.css'
import { ExpectedChart } from './ExpectedChart.tsx'
import { NeighbourTable } from './NeighbourTable.tsx'
import { OddsBars } from './OddsBars.tsx'
import type { Chosen } from './useChosen.ts'
import { VerdictTag } from './VerdictTag.tsx'
import { WhatIfPanel } from './WhatIfPanel.tsx'

type Props = {
  review: DayReview
  chosen: Chosen | null
  evidence: DayEvidence | null
  evidenceProblem: Problem | null
  whatIf: Omit<ComponentProps<typeof WhatIfPanel>, 'evidence' | 'onHover' | 'onChoose'>
  onTakeBack: (decision: WireDecision) => void
  onHover: (gaugeId: string | null) => void
  onChoose: (gaugeId: string) => void
}

export function EvidencePanel(props: Props) {
  const { review, chosen, evidence } = props
  const { words } = useWords()
  if (!chosen?.row)
    return (
      <div className={styles.panel}>
        <p className={styles.big}>{words.evidenceNone}</p>
        <p className={styles.soft}>{words.evidenceNoneMore}</p>
        <Section title={words.areaHeading}>
          <AreaTable areas={review.areas} />
        </Section>
      </div>
    )
  return (
    <div className={styles.panel} data-testid="evidence" data-reading={evidence?.readingId}>
      <Who chosen={chosen} />
      {chosen.readingId === null ? (
        <>
          <p className={styles.soft}>{words.evidenceSilent}</p>
          <Section title={words.areaHeading}>
            <AreaTable areas={review.areas} />
          </Section>
        </>
      ) : evidence ? (
        <Findings {...props} evidence={evidence} />
      ) : props.evidenceProblem ? (
        <Notice problem={props.evidenceProblem} />
      ) : (
        <p className={styles.soft}>{words.loading}</p>
      )}
    </div>
  )
}

function Section({ title, children }: { title: string; children: ReactNode }) {
  const id = useId()
  return (
    <section className={styles.section} aria-labelledby={id}>
      <h3 id={id}>{title}</h3>
      {children}
    </section>
  )
}

function Who({ chosen }: { chosen: Chosen }) {
  const { words, format } = useWords()
  const row = chosen.row!
  const decision = row.decision ?? chosen.docketRow?.decision
  return (
    <div className={styles.who}>
      <p className={styles.name}>
        {row.name} {decision?.by.kind === 'person' ? <VerdictTag decision={decision} /> : null}
      </p>
      <p className={styles.soft}>
        <code>{row.code}</code>
        {row.area ? ` · ${row.area}` : ''}
        {row.elevationM === null ? '' : ` · ${format.height(row.elevationM)}`}
        {row.observerName ? ` · ${row.observerName}` : ''} ·{' '}
        {row.awayUntil === undefined
          ? words.answers[row.answer]
          : fill(words.awayUntil, { day: format.dayShort(row.awayUntil) })}
      </p>
    </div>
  )
}

function Findings(props: Props & { evidence: DayEvidence }) {
  const { evidence } = props
  const { words } = useWords()
  return (
    <>
      <Typed evidence={evidence} />
      <p className={styles.sentence}>{evidence.sentence}</p>
      <AllowedForLine evidence={evidence} />
      <Section title={words.expectedHeading}>
        {evidence.canTell ? <ExpectedChart evidence={evidence} /> : <p className={styles.soft}>{words.cannotTell}</p>}
      </Section>
      {evidence.canTell ? (
        <Section title={words.oddsHeading}>
          <OddsBars evidence={evidence} />
        </Section>
      ) : null}
      <Section title={words.whatIf.heading}>
        <WhatIfPanel {...props.whatIf} evidence={evidence} onHover={props.onHover} onChoose={props.onChoose} />
      </Section>
      <Section title={words.neighboursHeading}>
        <NeighbourTable evidence={evidence} onHover={props.onHover} onChoose={props.onChoose} />
      </Section>
      <Section title={words.daysHeading}>
        <DaysAroundChart evidence={evidence} lastDay={props.review.lastDay} />
        {evidence.notes.map((note) => (
          <p key={note} className={styles.soft}>
            {note}
          </p>
        ))}
      </Section>
      {evidence.decisions.length > 0 ? (
        <Section title={words.historyHeading}>
          <DecisionHistory decisions={evidence.decisions} onTakeBack={props.onTakeBack} />
        </Section>
      ) : null}
    </>
  )
}

function Typed({ evidence }: { evidence: DayEvidence }) {
  const { words, format } = useWords()
  const { reading, earlier } = evidence
  const door = words.doors[reading.door as keyof typeof words.doors] ?? reading.door
  return (
    <div className={styles.typed}>
      <p>
        <span className={styles.label}>{words.typedHeading}</span> <q className={styles.text}>{reading.text}</q>{' '}
        <span>{fill(words.readAs, { amount: format.amount(reading.amountUm, reading.isTrace) })}</span>
      </p>
      <p className={styles.soft}>
        {fill(words.takenAt, { time: format.instant(reading.endsAtUtc) })}
        {reading.firstDay === reading.lastDay
          ? ''
          : ` · ${fill(words.interval, { from: format.dayShort(reading.firstDay), to: format.dayShort(reading.lastDay) })}`}{' '}
        · {fill(words.byDoor, { door })}
      </p>
      {reading.remark ? (
        <p>
          <span className={styles.label}>{words.remark}</span> {reading.remark}
        </p>
      ) : null}
      {earlier.length > 0 ? (
        <p className={styles.soft}>
          {words.earlierHeading}:{' '}
          {earlier
            .map((e) => fill(words.earlierText, { text: `“${e.text}”`, time: format.instant(e.receivedAtUtc) }))
            .join('; ')}
        </p>
      ) : null}
    </div>
  )
}
