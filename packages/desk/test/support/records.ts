/** Small records for tests: everything not named is plain and unequal enough to be told apart. */
import type { Decision, Reading } from '@gaugewright/science'
import type { Gauge } from '../../src/ports/ledger.ts'

export function gaugeOf(id: string, change: Partial<Gauge> = {}): Gauge {
  const place = id.charCodeAt(0) - 96
  return {
    id,
    networkId: 'n',
    code: id.toUpperCase(),
    name: `Gauge ${id}`,
    latDeg: 41 + 0.03 * place,
    lonDeg: 2 + 0.05 * place,
    elevationM: 300 + 17 * place,
    area: null,
    observerName: null,
    resolutionUm: 100,
    openedOn: null,
    closedOn: null,
    ...change,
  }
}

/** A daily reading of the 24 h that end at 07:00 UTC. */
export function readingOf(
  id: string,
  gaugeId: string,
  lastDay: string,
  amountUm: number,
  change: Partial<Reading> = {},
): Reading {
  return {
    id,
    gaugeId,
    kind: 'daily',
    firstDay: lastDay,
    lastDay,
    startsAtUtc: new Date(Date.parse(`${lastDay}T07:00:00Z`) - 86_400_000).toISOString(),
    endsAtUtc: `${lastDay}T07:00:00Z`,
    amountUm,
    isTrace: false,
    text: String(amountUm / 1000),
    unit: 'mm',
    remark: null,
    receivedAtUtc: `${lastDay}T07:05:00Z`,
    door: 'desk',
    supersedes: null,
    ...change,
  }
}

export function decisionOf(
  id: string,
  readingId: string,
  verdict: Decision['verdict'],
  amended: Decision['amended'] = null,
  change: Partial<Decision> = {},
): Decision {
  return {
    id,
    readingId,
    verdict,
    amended,
    by: { kind: 'person', name: 'coordinator' },
    reason: '',
    decidedAtUtc: '2026-03-03T08:00:00Z',
    undoes: null,
    ...change,
  }
}
