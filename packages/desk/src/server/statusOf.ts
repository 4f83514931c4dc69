/** The HTTP status of each problem. A code that is not listed is the asker's to mend: 400. */
const statuses: Record<string, number> = {
  LEDGER_EMPTY: 404,
  DAY_OUTSIDE_RECORD: 404,
  READING_UNKNOWN: 404,
  READING_NOT_JUDGED: 404,
  DECISION_UNKNOWN: 404,
  GAUGE_NOT_IN_NETWORK: 404,
  ROUTE_UNKNOWN: 404,
  READING_SUPERSEDED: 409,
  DECISION_ALREADY_UNDONE: 409,
  BODY_TOO_LARGE: 413,
  BODY_NOT_JSON: 415,
  HOST_REFUSED: 421,
  ORIGIN_REFUSED: 403,
  SCREENS_NOT_BUILT: 503,
  LEDGER_BUSY: 503,
  LEDGER_CANNOT_WRITE: 503,
  LEDGER_DAMAGED: 500,
  DESK_FAILED: 500,
}

export function statusOf(code: string): number {
  return statuses[code] ?? 400
}
