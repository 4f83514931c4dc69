/**
 * Take back an announced absence. Days that have passed stay announced, since nobody read on them and one total is still
 * expected; from the morning that is still open on, the roll expects the gauge again. Withdrawn twice is withdrawn once.
 */
import type { Actor, AnnouncedAbsence, WithdrawAbsenceAsk } from '@gaugewright/contract'
import { epochDayFromIso, isoFromEpochDay } from '@gaugewright/science'
import type { AnnouncedAbsence as StoredAbsence } from '../ports/absence.ts'
import type { Ports } from '../ports/ports.ts'
import { type Doer, writeTrail } from './access/doer.ts'
import { type Answer, answered, refused } from './answer.ts'
import { type OwnGauge, ownGauge } from './my/ownGauge.ts'
import { standingAbsences } from './my/standingAbsences.ts'

const MS_PER_MINUTE = 60_000

export async function withdrawAbsence(
  ports: Pick<Ports, 'ledger' | 'access' | 'absences' | 'clock' | 'newId'>,
  ask: WithdrawAbsenceAsk & { actor: Actor },
  doer: Doer,
): Promise<Answer<AnnouncedAbsence>> {
  const found = await ownGauge(ports, ask.actor, ask.gauge)
  if (!found.ok) return found
  const { network, gauge, nowUtc } = found.value
  const absence = (await ports.absences.ofGauge(network.id, gauge.id)).find(({ id }) => id === ask.absence)
  if (absence === undefined) {
    return refused('ABSENCE_UNKNOWN', 'no such absence of this gauge', 'Look at the list of absences again.')
  }
  if (absence.withdrawnAtUtc === null) {
    // What is kept is announced first: were the program to stop in between, too much stands, and nothing is lost.
    await keepPassedDays(ports, found.value, absence, ask.actor)
    await ports.absences.withdraw(network.id, absence.id, ask.actor.personId, nowUtc)
    await writeTrail(ports, doer, { act: 'withdrawAbsence', subject: gauge.id })
  }
  return answered({ absences: await standingAbsences(ports, found.value) })
}

async function keepPassedDays(
  ports: Pick<Ports, 'absences' | 'newId'>,
  { network, gauge, days, nowUtc }: OwnGauge,
  absence: StoredAbsence,
  actor: Actor,
): Promise<void> {
  // A morning can still be read while readings are accepted for it.
  const open = days.dayOf(Date.parse(nowUtc) - network.acceptWindowMin * MS_PER_MINUTE)
  if (epochDayFromIso(absence.firstDay) >= open) return
  const lastPassed = Math.min(open - 1, epochDayFromIso(absence.lastDay))
  if (lastPassed === epochDayFromIso(absence.lastDay)) return
  await ports.absences.announce({
    id: ports.newId(),
    networkId: network.id,
    gaugeId: gauge.id,
    firstDay: absence.firstDay,
    lastDay: isoFromEpochDay(lastPassed),
    announcedBy: actor.personId,
    announcedAtUtc: nowUtc,
  })
}
