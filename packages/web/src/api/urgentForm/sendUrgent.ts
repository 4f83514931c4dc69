/**
 * Sends the urgent reports that wait on the phone. Pages and the service worker may call it at the same time: a lock lets
 * one send, and the desk knows each filing and photo that it has.
 */
import { type FileUrgent, type Photo, routes } from '@gaugewright/contract'
import { askDesk } from '../askDesk.ts'
import { base64Of } from '../photos/base64Of.ts'
import { ProblemError } from '../problemError.ts'
import type { KeptUrgent } from './keptUrgent.ts'
import { meaningOf, sendingOrder } from './sendingOrder.ts'
import { changeUrgent, keptUrgent, photoReceived } from './urgentStore.ts'

export type UrgentOutcome = 'all sent' | 'no signal' | 'sign in'

const LOCK = 'gaugewright-urgent-send'
/** A call that hangs on a poor signal is given up and tried again; the desk takes the same report once. */
const PATIENCE_MS = { filing: 15_000, photo: 90_000 } as const

export function sendUrgent(onChange?: () => void): Promise<UrgentOutcome> {
  return navigator.locks.request(LOCK, async () => {
    // What is filed while photos are on their way goes before the next photo.
    for (;;) {
      const next = sendingOrder(await keptUrgent())[0]
      if (next === undefined) return 'all sent'
      const outcome = await sendOne(next)
      onChange?.()
      if (outcome !== 'on') return outcome
    }
  })
}

async function sendOne(kept: KeptUrgent): Promise<'on' | 'no signal' | 'sign in'> {
  try {
    const signal = AbortSignal.timeout(PATIENCE_MS[kept.what])
    if (kept.what === 'filing') {
      const { receivedAtUtc } = await askDesk<FileUrgent>(routes.fileUrgent.path, kept.filing, signal)
      await changeUrgent({ ...kept, state: 'received', receivedAtUtc, problem: null })
    } else if (kept.jpeg !== null) {
      const ask = { reportId: kept.reportId, imageBase64: await base64Of(kept.jpeg) }
      await photoReceived(kept, await askDesk<Photo>(routes.addPhoto.path, ask, signal), new Date().toISOString())
    }
    return 'on'
  } catch (error) {
    if (!(error instanceof ProblemError)) return 'no signal'
    const meaning = meaningOf(error.problem.code)
    if (meaning === 'later') return 'no signal'
    if (meaning === 'sign in') return 'sign in'
    // A refused report waits for its observer; those behind it do not wait for it.
    await changeUrgent({ ...kept, state: 'refused', problem: error.problem })
    return 'on'
  }
}
