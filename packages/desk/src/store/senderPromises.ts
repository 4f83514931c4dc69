/** What every store of senders' keys must keep. Run by the test of each adapter. */
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { LedgerError } from '../ports/ledgerError.ts'
import type { SenderKey, Senders } from '../ports/senders.ts'

const key = (id: string, more: Partial<SenderKey> = {}): SenderKey => ({
  id,
  sender: `station ${id}`,
  scopes: ['send', 'read'],
  start: `gw_${id}`,
  keyHash: id.padEnd(64, '0'),
  madeAtUtc: `2026-03-0${id.at(-1)}T10:00:00Z`,
  madeBy: 'coordinator',
  revokedAtUtc: null,
  lastUsedOn: null,
  ...more,
})

export function senderPromises(
  name: string,
  open: () => Promise<{ senders: Senders; close: () => Promise<void> }>,
): void {
  describe(`${name} keeps keys of senders`, () => {
    let senders: Senders
    let close: () => Promise<void>

    beforeEach(async () => {
      ;({ senders, close } = await open())
    })
    afterEach(async () => await close())

    it('as they were added, oldest first, and finds one by the digest of what was shown once', async () => {
      await senders.addKey(key('k2', { scopes: ['urgent'] }))
      await senders.addKey(key('k1'))
      expect((await senders.keys()).map(({ id }) => id)).toEqual(['k1', 'k2'])
      expect(await senders.keyByHash(key('k2').keyHash)).toEqual(key('k2', { scopes: ['urgent'] }))
      expect(await senders.keyByHash(key('k3').keyHash)).toBeNull()
    })

    it('once each: neither id nor digest may be taken', async () => {
      await senders.addKey(key('k1'))
      expect(await refusal(senders.addKey(key('k1', { keyHash: 'f'.repeat(64) })))).toBe('ID_TAKEN')
      expect(await refusal(senders.addKey(key('k2', { keyHash: key('k1').keyHash })))).toBe('ID_TAKEN')
      expect(await senders.keys()).toEqual([key('k1')])
    })

    it('revoked from the first time on, and still to be found', async () => {
      await senders.addKey(key('k1'))
      const revoked = await senders.revokeKey('k1', '2026-04-01T08:00:00Z')
      expect(revoked.revokedAtUtc).toBe('2026-04-01T08:00:00Z')
      expect((await senders.revokeKey('k1', '2026-05-01T08:00:00Z')).revokedAtUtc).toBe('2026-04-01T08:00:00Z')
      expect((await senders.keyByHash(key('k1').keyHash))?.revokedAtUtc).toBe('2026-04-01T08:00:00Z')
      expect(await refusal(senders.revokeKey('k9', '2026-04-01T08:00:00Z'))).toBe('KEY_UNKNOWN')
    })

    it('with the day of their last use', async () => {
      await senders.addKey(key('k1'))
      await senders.usedOn('k1', '2026-03-29')
      await senders.usedOn('k1', '2026-03-30')
      expect((await senders.keys())[0]?.lastUsedOn).toBe('2026-03-30')
    })
  })
}

async function refusal(asked: Promise<unknown>): Promise<string> {
  const error = await asked.then(
    () => null,
    (thrown: unknown) => thrown,
  )
  return error instanceof LedgerError ? error.problem.code : String(error)
}
