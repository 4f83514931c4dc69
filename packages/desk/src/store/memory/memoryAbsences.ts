/** Announced absences in memory, beside the ledger that they belong to. */
import type { Absences, AnnouncedAbsence } from '../../ports/absence.ts'
import { checkAbsence } from '../checkAbsence.ts'
import { evenUtc } from '../outbox/evenInstant.ts'
import { unknownGauge, unknownNetwork } from '../unknown.ts'
import type { MemoryNetwork } from './memoryNetwork.ts'

export function memoryAbsences(ledger: { networkOf(id: string): MemoryNetwork | null }): Absences {
  const of = (networkId: string): AnnouncedAbsence[] => ledger.networkOf(networkId)?.absences ?? []
  return {
    async announce(absence) {
      checkAbsence(absence)
      const network = ledger.networkOf(absence.networkId)
      if (network === null) throw unknownNetwork(absence.networkId)
      if (!network.gauges.has(absence.gaugeId)) throw unknownGauge(absence.gaugeId, absence.networkId)
      const isSame = (other: AnnouncedAbsence): boolean =>
        other.gaugeId === absence.gaugeId &&
        other.firstDay === absence.firstDay &&
        other.lastDay === absence.lastDay &&
        other.withdrawnBy === null
      if (network.absences.some(isSame)) return false
      const announcedAtUtc = evenUtc(absence.announcedAtUtc)
      network.absences.push({ ...absence, announcedAtUtc, withdrawnBy: null, withdrawnAtUtc: null })
      return true
    },
    async withdraw(networkId, id, by, atUtc) {
      const found = of(networkId).find((absence) => absence.id === id && absence.withdrawnBy === null)
      if (found === undefined) return false
      found.withdrawnBy = by
      found.withdrawnAtUtc = evenUtc(atUtc)
      return true
    },
    async ofDays(networkId, fromDay, toDay) {
      const order = ({ firstDay, gaugeId }: AnnouncedAbsence): string => `${firstDay} ${gaugeId}`
      return of(networkId)
        .filter((one) => one.withdrawnBy === null && one.firstDay <= toDay && one.lastDay >= fromDay)
        .map((absence) => ({ ...absence }))
        .sort((one, other) => (order(one) < order(other) ? -1 : 1))
    },
    async ofGauge(networkId, gaugeId) {
      return of(networkId)
        .filter((absence) => absence.gaugeId === gaugeId)
        .map((absence) => ({ ...absence }))
    },
  }
}
