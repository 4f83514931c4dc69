/**
 * Absences announced ahead: days for which nobody will read a gauge. The roll shows them as away and then expects one total
 * over them. Only ever added to: a change of plan withdraws one announcement and makes another.
 */
import type { IsoDay } from '@gaugewright/science'

export interface AnnouncedAbsence {
  id: string
  networkId: string
  gaugeId: string
  firstDay: IsoDay
  lastDay: IsoDay
  /** Id of the person, as in the trail, so that erasing the person leaves no name; `coordinator` where nobody signs in. */
  announcedBy: string
  announcedAtUtc: string
  withdrawnBy: string | null
  withdrawnAtUtc: string | null
}

/** Every method rejects with a LedgerError, and then nothing has changed. Whatever resolved is durable. */
export interface Absences {
  /** The same gauge and days twice are one: false where they stand announced already. LEDGER_GAUGE_UNKNOWN, ABSENCE_NOT_VALID */
  announce(absence: Omit<AnnouncedAbsence, 'withdrawnBy' | 'withdrawnAtUtc'>): Promise<boolean>
  /** False where there is no such absence, or it is withdrawn already. */
  withdraw(networkId: string, id: string, by: string, atUtc: string): Promise<boolean>
  /** Every absence that covers any of the days and is not withdrawn, by first day and gauge. */
  ofDays(networkId: string, fromDay: IsoDay, toDay: IsoDay): Promise<AnnouncedAbsence[]>
  /** Every absence of the gauge, withdrawn ones too, oldest announcement first. */
  ofGauge(networkId: string, gaugeId: string): Promise<AnnouncedAbsence[]>
}
