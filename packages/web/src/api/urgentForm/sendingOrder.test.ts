import { describe, expect, it } from 'vitest'
import { base64Of } from '../photos/base64Of.ts'
import { filingNaming } from './filingNaming.ts'
import type { KeptUrgent } from './keptUrgent.ts'
import { meaningOf, sendingOrder } from './sendingOrder.ts'

const kept = (seq: number, what: 'filing' | 'photo', state: KeptUrgent['state'] = 'waiting') =>
  ({ seq, what, state }) as KeptUrgent

describe('sending', () => {
  it('sends filings in the order of making, then photos, and nothing twice', () => {
    const all = [
      kept(4, 'filing'),
      kept(2, 'photo'),
      kept(1, 'filing'),
      kept(3, 'filing', 'received'),
      kept(5, 'photo'),
    ]
    expect(sendingOrder(all).map(({ seq }) => seq)).toEqual([1, 4, 2, 5])
    expect(sendingOrder([kept(1, 'filing', 'refused'), kept(2, 'photo', 'received')])).toEqual([])
  })

  it('keeps a report that the desk could not take now, and gives up only one that it never will', () => {
    for (const code of ['DESK_UNREACHABLE', 'DESK_FAILED', 'LEDGER_BUSY', 'TOO_OFTEN'])
      expect(meaningOf(code)).toBe('later')
    expect(meaningOf('SIGN_IN_NEEDED')).toBe('sign in')
    for (const code of ['ASK_NOT_VALID', 'URGENT_ID_TAKEN', 'PHOTO_UNREADABLE', 'URGENT_UNKNOWN'])
      expect(meaningOf(code)).toBe('refused')
  })

  it('writes files of any length in base64', async () => {
    const bytes = Uint8Array.from({ length: 100_003 }, (_, i) => (i * 7) % 256)
    expect(await base64Of(new Blob([bytes]))).toBe(Buffer.from(bytes).toString('base64'))
  })
})

it('a photo that arrived is named by a filing that says what the newest one says, and every photo before it', () => {
  const filing = (seq: number, remark: string) => ({
    seq,
    what: 'filing',
    reportId: 'r',
    filing: { id: `f${seq}`, remark },
  })
  const photo = (seq: number, sha256: string | null, reportId = 'r') => ({ seq, what: 'photo', reportId, sha256 })
  const all = [
    filing(4, 'newest'),
    filing(1, 'first'),
    photo(2, 'aa'),
    photo(3, 'bb'),
    photo(5, null),
    photo(6, 'cc', 'x'),
  ]
  const naming = filingNaming('r', all as KeptUrgent[], 'new-id', '2026-06-09T17:00:00.000Z')
  expect(naming).toMatchObject({ id: 'new-id', updates: 'r', remark: 'newest', photoIds: ['aa', 'bb'] })
  expect(filingNaming('nothing', all as KeptUrgent[], 'i', 'now')).toBeNull()
})
