/** Announced absences for the desk: those that stand and have not passed, or the whole history of one gauge. */
import type { ListAbsencesAsk, NetworkAbsences } from '@gaugewright/contract'
import { isoFromEpochDay, observingDays } from '@gaugewright/science'
import type { Ports } from '../ports/ports.ts'
import { type Answer, answered, refused } from './answer.ts'
import { firstNetwork } from './urgent/firstNetwork.ts'

/** An absence may begin a year ahead, and last another. */
const AHEAD_DAYS = 732

export async function listAbsences(
  ports: Pick<Ports, 'ledger' | 'absences' | 'clock'>,
  ask: ListAbsencesAsk,
): Promise<Answer<NetworkAbsences>> {
  const network = await firstNetwork(ports)
  if (!network.ok) return network
  const { id: networkId, timeZone, readingTime } = network.value
  const days = observingDays(timeZone, readingTime)
  if (days.kind === 'problem') return refused(days.code, days.seen, days.advice)
  const gauges = await ports.ledger.gauges(networkId)
  const wanted = ask.gauge?.toLowerCase()
  const asked = gauges.find(({ id, code }) => id === ask.gauge || code.toLowerCase() === wanted)
  if (wanted !== undefined && asked === undefined) {
    return refused('GAUGE_NOT_IN_NETWORK', `the gauge "${ask.gauge}"`, 'Give the code of a gauge of the network.')
  }
  const today = days.days.dayOf(Date.parse(ports.clock.nowUtc()))
  const found =
    asked === undefined
      ? await ports.absences.ofDays(networkId, isoFromEpochDay(today), isoFromEpochDay(today + AHEAD_DAYS))
      : await ports.absences.ofGauge(networkId, asked.id)
  const byId = new Map(gauges.map((gauge) => [gauge.id, gauge]))
  return answered({
    absences: found.map(({ id, gaugeId, firstDay, lastDay, announcedAtUtc, withdrawnAtUtc }) => {
      const { code, name } = byId.get(gaugeId) ?? { code: gaugeId, name: '' }
      return { id, code, gaugeName: name, firstDay, lastDay, announcedAtUtc, withdrawnAtUtc }
    }),
  })
}
