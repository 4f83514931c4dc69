/** Reports as the phone shows them, out of what it keeps: the newest filing of each, its photos, and how far they are. */
import type { FileUrgentInput, Problem } from '@gaugewright/contract'
import type { KeptFiling, KeptPhoto, KeptUrgent } from '../../api/urgentForm/keptUrgent.ts'

export interface ReportOnPhone {
  reportId: string
  /** The newest. */
  filing: FileUrgentInput
  madeAtUtc: string
  /** The worst of its filings: refused, then waiting, then received. */
  state: KeptFiling['state']
  receivedAtUtc: string | null
  problem: Problem | null
  photos: KeptPhoto[]
}

/** Newest report first. */
export function reportsOnPhone(kept: readonly KeptUrgent[]): ReportOnPhone[] {
  const reports = [...groupByReport(kept.filter(isFiling))].map(([reportId, all]): ReportOnPhone => {
    const sorted = all.toSorted((one, other) => one.seq - other.seq)
    const newest = sorted.at(-1)!
    const refused = sorted.findLast(({ state }) => state === 'refused')
    const isWaiting = sorted.some(({ state }) => state === 'waiting')
    return {
      reportId,
      filing: newest.filing,
      madeAtUtc: sorted[0]!.madeAtUtc,
      state: refused === undefined ? (isWaiting ? 'waiting' : 'received') : 'refused',
      receivedAtUtc: newest.receivedAtUtc,
      problem: refused?.problem ?? null,
      photos: kept.filter(isPhoto).filter((photo) => photo.reportId === reportId),
    }
  })
  return reports.sort((one, other) => (one.madeAtUtc < other.madeAtUtc ? 1 : -1))
}

function groupByReport(filings: readonly KeptFiling[]): Map<string, KeptFiling[]> {
  const groups = new Map<string, KeptFiling[]>()
  for (const filing of filings) groups.set(filing.reportId, [...(groups.get(filing.reportId) ?? []), filing])
  return groups
}

const isFiling = (kept: KeptUrgent): kept is KeptFiling => kept.what === 'filing'
const isPhoto = (kept: KeptUrgent): kept is KeptPhoto => kept.what === 'photo'
