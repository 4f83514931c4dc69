import type { DayEvidence } from '@gaugewright/contract'
import { useState } from 'react'
import { Button } from '../../ui/Button.tsx'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import styles from './NeighbourTable.module.css'
import { byWeight, shownNeighbours } from './neighboursView.ts'

type Props = { evidence: DayEvidence; onHover: (gaugeId: string | null) => void; onChoose: (gaugeId: string) => void }

export function NeighbourTable({ evidence, onHover, onChoose }: Props) {
  const { words, format } = useWords()
  const [isAll, setAll] = useState(false)
  if (evidence.neighbours.length === 0) return <p className={styles.none}>{words.neighboursNone}</p>
  const sorted = byWeight(evidence.neighbours)
  const rows = isAll ? sorted : sorted.slice(0, shownNeighbours)
  const heaviest = rows[0]!.weight || 1
  return (
    <>
      <table className={styles.table}>
        <thead>
          <tr>
            <th scope="col">{words.columns.name}</th>
            <th scope="col" className={styles.number}>
              {words.columns.distance}
            </th>
            <th scope="col">{words.columns.bearing}</th>
            <th scope="col" className={styles.number}>
              {words.columns.amount}, {format.unitName}
            </th>
            <th scope="col">{words.columns.weight}</th>
            <th scope="col" className={styles.number}>
              {words.columns.belief}
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map((n) => (
            <tr key={n.gaugeId} onMouseEnter={() => onHover(n.gaugeId)} onMouseLeave={() => onHover(null)}>
              <th scope="row">
                <button
                  type="button"
                  onClick={() => onChoose(n.gaugeId)}
                  onFocus={() => onHover(n.gaugeId)}
                  onBlur={() => onHover(null)}
                >
                  {n.name}
                </button>
              </th>
              <td className={styles.number}>{format.distance(n.distanceM)}</td>
              <td>
                <svg width="12" height="12" viewBox="-6 -6 12 12" aria-hidden="true">
                  <path d="M0 -5L3.4 4.5L0 2.4L-3.4 4.5Z" transform={`rotate(${n.bearingDeg})`} fill="currentColor" />
                </svg>{' '}
                {format.compass(n.bearingDeg)}
              </td>
              <td className={styles.number}>
                {n.amountMm === null ? '–' : format.amountBare(Math.round(n.amountMm * 1000), n.isTrace)}
              </td>
              <td>
                <span className={styles.weight}>
                  <span style={{ width: `${(n.weight / heaviest) * 100}%` }} />
                </span>
                <span className="sr-only">{format.percent(n.weight)}</span>
              </td>
              <td className={`${styles.number} ${n.believed < 0.5 ? styles.doubt : ''}`}>
                {n.believed < 0.5 ? <span aria-hidden="true">! </span> : null}
                {format.percentTight(n.believed)}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {sorted.length > rows.length ? (
        <Button look="quiet" onClick={() => setAll(true)}>
          {fill(words.neighboursMore, { count: sorted.length })}
        </Button>
      ) : null}
    </>
  )
}
