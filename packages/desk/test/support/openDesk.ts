/** A desk in memory on a small network, with a clock that stands and ids that count. */

import { carriers } from '../../src/carriers/carriers.ts'
import { redrawPhoto } from '../../src/intake/redrawPhoto.ts'
import type { Ledger } from '../../src/ports/ledger.ts'
import type { Ports } from '../../src/ports/ports.ts'
import { buildServer } from '../../src/server/buildServer.ts'
import { memoryAbsences } from '../../src/store/memory/memoryAbsences.ts'
import { openMemoryAccess } from '../../src/store/memory/memoryAccess.ts'
import { memoryJournal } from '../../src/store/memory/memoryJournal.ts'
import { type MemoryLedger, openMemoryLedger } from '../../src/store/memory/memoryLedger.ts'
import { openMemoryOutbox } from '../../src/store/memory/memoryOutbox.ts'
import { openMemoryOutgoingSettings } from '../../src/store/memory/memoryOutgoingSettings.ts'
import { openMemoryPhotos } from '../../src/store/memory/memoryPhotos.ts'
import { MemorySenders } from '../../src/store/memory/memorySenders.ts'
import { openMemoryUrgent } from '../../src/store/memory/memoryUrgent.ts'
import { type SmallNetwork, smallNetwork } from './smallNetwork.ts'

export async function fillLedger(ledger: Ledger, small: SmallNetwork): Promise<void> {
  await ledger.saveNetwork(small.network)
  await ledger.saveGauges(small.gauges)
  await ledger.appendReadings(small.network.id, small.readings)
}

/** What is kept beside the ledger stays in memory, unless it is given. */
export function portsOver(ledger: Ledger, beside: Partial<Ports> = {}): Ports {
  let count = 0
  return {
    ledger,
    access: openMemoryAccess(),
    absences: memoryAbsences(ledger as MemoryLedger),
    journal: memoryJournal(ledger as MemoryLedger),
    outbox: openMemoryOutbox(ledger),
    outgoingSettings: openMemoryOutgoingSettings(ledger),
    carriers,
    outgoingSecrets: { smtpPassword: null, webhookSecret: null },
    photos: openMemoryPhotos(),
    urgent: openMemoryUrgent(),
    senders: new MemorySenders(),
    redrawPhoto,
    clock: { nowUtc: () => '2026-05-31T08:30:00Z' },
    newId: () => `id-${String(++count).padStart(6, '0')}`,
    ...beside,
  }
}

/** @param letStandAt  of the rule that is set from the start */
export async function openTestDesk(
  change: Parameters<typeof smallNetwork>[1] = {},
  dayCount = 150,
  letStandAt: number | null = null,
) {
  const small = smallNetwork(dayCount, change)
  const ledger = openMemoryLedger()
  await fillLedger(ledger, small)
  if (letStandAt !== null) {
    const setting = { id: 'rule', letStandAt, by: 'coordinator', why: 'a test', setAtUtc: '2026-05-01T08:00:00Z' }
    await ledger.appendRuleSetting(small.network.id, setting)
  }
  const ports = portsOver(ledger)
  const failures: Error[] = []
  const app = await buildServer(ports, { screens: '/nowhere', onFailure: (error) => failures.push(error) })
  return { app, ports, small, failures }
}
