/** What the observer's page asks the desk. The last answer is kept on the phone. */
import type {
  AnnounceAbsenceAsk,
  AnnouncedAbsence,
  CheckEntryAsk,
  CheckedEntry,
  MyGauge,
  MyGauges,
  MyRecord,
  WireEntryQuestion,
  WithdrawAbsenceAsk,
} from '@gaugewright/contract'
import { routes } from '@gaugewright/contract'
import { askDesk } from '../askDesk.ts'
import { keepGauge, keptGauge } from './phoneStore.ts'

const pathOf = (pattern: string, gauge: string) => pattern.replace(':gauge', encodeURIComponent(gauge))
const CHECK_PATIENCE_MS = 2500

export const askMyGauges = () => askDesk<MyGauges>(routes.myGauges.path)

/** Asks for the gauge and keeps the answer. @throws {ProblemError} */
export async function askMyGauge(code: string): Promise<MyGauge> {
  const gauge = await askDesk<MyGauge>(pathOf(routes.myGauge.path, code))
  const before = await keptGauge(gauge.gauge.code)
  const climate = gauge.climate ?? before?.gauge.climate ?? null
  const kept = { ...gauge, climate }
  await keepGauge({ code: gauge.gauge.code, gauge: kept, record: before?.record ?? null, keptAtUtc: gauge.nowUtc })
  return kept
}

/** @throws {ProblemError} */
export async function askMyRecord(code: string): Promise<MyRecord> {
  const record = await askDesk<MyRecord>(pathOf(routes.myRecord.path, code))
  const before = await keptGauge(code)
  if (before !== undefined) await keepGauge({ ...before, record })
  return record
}

/** @throws {ProblemError} where the desk is out of reach or slow; then the phone checks by itself */
export async function askCheck(ask: CheckEntryAsk): Promise<WireEntryQuestion | null> {
  const answer = await askDesk<CheckedEntry>(routes.checkEntry.path, ask, AbortSignal.timeout(CHECK_PATIENCE_MS))
  return answer.question
}

/** @throws {ProblemError} */
export const announceAbsence = (ask: AnnounceAbsenceAsk) => askDesk<AnnouncedAbsence>(routes.announceAbsence.path, ask)

/** @throws {ProblemError} */
export const withdrawAbsence = (ask: WithdrawAbsenceAsk) => askDesk<AnnouncedAbsence>(routes.withdrawAbsence.path, ask)
