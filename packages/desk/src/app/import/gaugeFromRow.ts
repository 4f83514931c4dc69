import type { GaugeRow } from '../../ports/intakeFiles.ts'
import type { Gauge } from '../../ports/ledger.ts'

const UM_PER_MM = 1000

/** A gauge of the ledger from a row in degrees. Its code is kept as it comes; what the row leaves out stays as it was. */
export function gaugeFromRow(row: GaugeRow, networkId: string, before: Gauge | undefined): Gauge {
  return {
    id: before?.id ?? row.id,
    networkId,
    code: row.id,
    name: row.name || before?.name || row.id,
    latDeg: row.north,
    lonDeg: row.east,
    elevationM: row.elevationM ?? before?.elevationM ?? null,
    area: row.area ?? before?.area ?? null,
    observerName: row.observer ?? before?.observerName ?? null,
    resolutionUm: row.resolutionMm === null ? (before?.resolutionUm ?? null) : Math.round(row.resolutionMm * UM_PER_MM),
    openedOn: before?.openedOn ?? null,
    closedOn: before?.closedOn ?? null,
  }
}
