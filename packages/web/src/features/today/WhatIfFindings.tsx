import type { ChangedFinding, WhatIf } from '@gaugewright/contract'
import { fill } from '../../words/fill.ts'
import { unbroken } from '../../words/unbroken.ts'
import { useWords } from '../../words/WordsContext.tsx'
import styles from './WhatIfPanel.module.css'

type Props = { whatIf: WhatIf; onHover: (gaugeId: string | null) => void; onChoose: (gaugeId: string) => void }

/** Which other readings would be found more or less likely to stand, and what would be left to decide. */
export function WhatIfFindings({ whatIf, onHover, onChoose }: Props) {
  const { words, format } = useWords()
  const { findings, findingCount, toDecideBefore, toDecideAfter } = whatIf
  const rest = findingCount - findings.length
  const toDecide = fill(words.whatIf.toDecide, { before: toDecideBefore, after: toDecideAfter })
  if (findings.length === 0)
    return (
      <p className={styles.note}>
        {words.whatIf.noReading} {toDecide}
      </p>
    )
  return (
    <>
      <table className={styles.findings}>
        <thead>
          <tr>
            <th scope="col">{words.whatIf.readings}</th>
            <th scope="col">
              {words.whatIf.typed}, {format.unitName}
            </th>
            <th scope="col">
              {words.columns.odds} {words.whatIf.before.toLowerCase()}
            </th>
            <th scope="col">{words.whatIf.after}</th>
          </tr>
        </thead>
        <tbody>
          {findings.map((finding) => (
            <tr
              key={finding.readingId}
              onMouseEnter={() => onHover(finding.gaugeId)}
              onMouseLeave={() => onHover(null)}
              data-reading={finding.readingId}
            >
              <th scope="row">
                <button
                  type="button"
                  onClick={() => onChoose(finding.gaugeId)}
                  onFocus={() => onHover(finding.gaugeId)}
                  onBlur={() => onHover(null)}
                >
                  {finding.name}
                </button>
                <Mistake finding={finding} />
              </th>
              <td>{format.amountBare(finding.amountUm, finding.isTrace)}</td>
              <td>{format.percentTight(finding.before.standsOdds)}</td>
              <td className={finding.after.toDecide ? styles.doubt : ''}>
                <span aria-hidden="true">{finding.after.standsOdds > finding.before.standsOdds ? '▲ ' : '▼ '}</span>
                <b>{format.percentTight(finding.after.standsOdds)}</b>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className={styles.note}>
        {rest > 0 ? `${fill(words.whatIf.more, { count: rest })}. ` : ''}
        {toDecide}
      </p>
    </>
  )
}

/** The likeliest mistake before and after, and whether the reading comes onto the docket or leaves it. */
function Mistake({ finding: { before, after } }: { finding: ChangedFinding }) {
  const { words, format } = useWords()
  const nameOf = (kind: ChangedFinding['before']['likeliest']) => words.explanations[kind]
  const oddsOf = (odds: number) => unbroken(format.percentTight(odds))
  const then = `${before.likeliest === after.likeliest ? '' : `${nameOf(after.likeliest)} `}${oddsOf(after.likeliestOdds)}`
  return (
    <small>
      {before.toDecide === after.toDecide ? null : (
        <span className={after.toDecide ? styles.doubt : styles.cleared}>
          {after.toDecide ? words.whatIf.comes : words.whatIf.leaves} ·{' '}
        </span>
      )}
      {nameOf(before.likeliest)} {oddsOf(before.likeliestOdds)} → {then}
    </small>
  )
}
