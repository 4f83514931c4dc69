/** How a gauge looks on the map. Shape tells the kind of answer, so that nothing hangs on colour alone. */
import type { RollRow } from '@gaugewright/contract'

export type GaugeMark = {
  shape: 'disc' | 'ring' | 'ringWithDot' | 'square' | 'cross' | 'dash' | 'struck'
  /** Amount that colours a disc or square, mm; null where there is none. */
  mm: number | null
  doubtful: boolean
}

export function gaugeMark(row: RollRow, doubtful: boolean): GaugeMark {
  if (row.decision?.verdict === 'set aside') return { shape: 'struck', mm: null, doubtful }
  if (row.answer === 'silent') return { shape: 'cross', mm: null, doubtful: false }
  if (row.answer === 'away' || row.answer === 'multi-day open' || row.amountUm === null)
    return { shape: 'dash', mm: null, doubtful: false }
  const mm = (row.acceptedUm ?? row.amountUm) / 1000
  if (row.spanDays > 1) return { shape: 'square', mm, doubtful }
  if (mm > 0) return { shape: 'disc', mm, doubtful }
  return { shape: row.isTrace && row.decision?.verdict !== 'amended' ? 'ringWithDot' : 'ring', mm: 0, doubtful }
}
