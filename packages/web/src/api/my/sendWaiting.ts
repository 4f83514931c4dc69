/**
 * Sends the reports that wait on the phone, one after the other, in their order. Pages and the service worker may call it
 * at the same time: a lock lets one send, and the desk knows a reading it has by its id.
 */
import { routes, type SentReadings } from '@gaugewright/contract'
import { askDesk } from '../askDesk.ts'
import { problemFrom } from '../problemError.ts'
import { changeReport, type KeptReport, keptReports } from './phoneStore.ts'

/** `left`: nothing waits. `no signal`: the desk was not reached. `sign in`: it wants to know first who sends. */
export type SendOutcome = 'all sent' | 'no signal' | 'sign in'

const LOCK = 'gaugewright-my-send'
/** Not the report's fault: it stays and is tried again. */
const passing = new Set([
  'DESK_UNREACHABLE',
  'DESK_ANSWER_UNREADABLE',
  'DESK_FAILED',
  'LEDGER_BUSY',
  'LEDGER_CANNOT_WRITE',
  'TOO_OFTEN',
])

export function sendWaiting(onChange?: () => void): Promise<SendOutcome> {
  return navigator.locks.request(LOCK, async () => {
    for (const report of await keptReports()) {
      if (report.state !== 'waiting') continue
      const outcome = await sendOne(report)
      onChange?.()
      if (outcome !== 'on') return outcome
    }
    return 'all sent'
  })
}

async function sendOne(report: KeptReport): Promise<'on' | 'no signal' | 'sign in'> {
  try {
    const { gauge, readings } = report
    const sent = await askDesk<SentReadings>(routes.sendReadings.path, { gauge, readings })
    await changeReport({ ...report, state: 'received', receivedAtUtc: sent.receivedAtUtc, problem: null })
    return 'on'
  } catch (error) {
    const problem = problemFrom(error)
    if (passing.has(problem.code)) return 'no signal'
    if (problem.code === 'SIGN_IN_NEEDED') return 'sign in'
    // A refused report, one for a gauge of somebody else too, waits for its observer; those behind it do not wait for it.
    await changeReport({ ...report, state: 'refused', problem })
    return 'on'
  }
}
