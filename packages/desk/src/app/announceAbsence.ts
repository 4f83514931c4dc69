/** An observer says ahead that nobody will read the gauge: the roll then shows it away, and expects one total afterwards. */
import type { Actor, AnnounceAbsenceAsk, AnnouncedAbsence } from '@gaugewright/contract'
import { epochDayFromIso } from '@gaugewright/science'
import type { Ports } from '../ports/ports.ts'
import { type Doer, writeTrail } from './access/doer.ts'
import { type Answer, answered, refused } from './answer.ts'
import { ownGauge } from './my/ownGauge.ts'
import { standingAbsences } from './my/standingAbsences.ts'

const LONGEST_DAYS = 366
const BACK_DAYS = 31
const AHEAD_DAYS = 366

export async function announceAbsence(
  ports: Pick<Ports, 'ledger' | 'access' | 'absences' | 'clock' | 'newId'>,
  ask: AnnounceAbsenceAsk & { actor: Actor },
  doer: Doer,
): Promise<Answer<AnnouncedAbsence>> {
  const found = await ownGauge(ports, ask.actor, ask.gauge)
  if (!found.ok) return found
  const { network, gauge, days, nowUtc } = found.value
  const today = days.dayOf(Date.parse(nowUtc))
  const first = epochDayFromIso(ask.firstDay)
  const last = epochDayFromIso(ask.lastDay)
  if (first > last || last - first >= LONGEST_DAYS || first < today - BACK_DAYS || first > today + AHEAD_DAYS) {
    return refused(
      'ABSENCE_NOT_VALID',
      `${ask.firstDay} to ${ask.lastDay}`,
      `Give days in order, at most ${LONGEST_DAYS} of them, beginning within a month before or a year after today.`,
    )
  }
  const isNew = await ports.absences.announce({
    id: ports.newId(),
    networkId: network.id,
    gaugeId: gauge.id,
    firstDay: ask.firstDay,
    lastDay: ask.lastDay,
    announcedBy: ask.actor.personId,
    announcedAtUtc: nowUtc,
  })
  if (isNew) await writeTrail(ports, doer, { act: 'announceAbsence', subject: gauge.id })
  return answered({ absences: await standingAbsences(ports, found.value) })
}
