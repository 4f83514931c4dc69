import type { RollRow } from '@gaugewright/contract'
import { expect, it } from 'vitest'
import { gaugeMark } from './gaugeMark.ts'

const read: RollRow = {
  gaugeId: 'g',
  code: 'C',
  name: 'N',
  area: null,
  observerName: null,
  latDeg: 0,
  lonDeg: 0,
  elevationM: null,
  answer: 'read',
  readingId: 'r',
  amountUm: 2540,
  isTrace: false,
  text: '0.10',
  spanDays: 1,
  endsAtUtc: null,
  standsOdds: 0.9,
  decision: null,
  acceptedUm: 2540,
}
const shape = (over: Partial<RollRow>) => gaugeMark({ ...read, ...over }, false).shape

it('tells wet, dry, trace, silent, away, multi-day and set aside apart by shape alone', () => {
  const aside = {
    id: 'd',
    readingId: 'r',
    verdict: 'set aside' as const,
    amended: null,
    by: { kind: 'person' as const, name: 'x' },
    reason: '',
    decidedAtUtc: '',
    undoes: null,
  }
  const shapes = [
    shape({}),
    shape({ amountUm: 0, acceptedUm: 0 }),
    shape({ amountUm: 0, acceptedUm: 0, isTrace: true }),
    shape({ answer: 'silent', amountUm: null, acceptedUm: null }),
    shape({ answer: 'away', amountUm: null, acceptedUm: null }),
    shape({ spanDays: 3 }),
    shape({ decision: aside, acceptedUm: null }),
  ]
  expect(shapes).toEqual(['disc', 'ring', 'ringWithDot', 'cross', 'dash', 'square', 'struck'])
})

it('colours by the accepted amount, and keeps the halo of a doubtful reading', () => {
  expect(gaugeMark({ ...read, acceptedUm: 254 }, true)).toEqual({ shape: 'disc', mm: 0.254, doubtful: true })
})
