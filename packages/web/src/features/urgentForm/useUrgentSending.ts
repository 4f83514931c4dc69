import type { FileUrgentInput } from '@gaugewright/contract'
import { useCallback, useEffect, useRef, useState } from 'react'
import type { KeptUrgent } from '../../api/urgentForm/keptUrgent.ts'
import { sendUrgent, type UrgentOutcome } from '../../api/urgentForm/sendUrgent.ts'
import { dropOldUrgent, keepFiling, keepPhoto, keptUrgent } from '../../api/urgentForm/urgentStore.ts'

const RETRY_MS = 5_000

export interface UrgentSending {
  /** Null until the phone's store has been read. */
  kept: KeptUrgent[] | null
  /** How the last try ended; null before one has, and while one runs. */
  outcome: UrgentOutcome | null
  isSending: boolean
  /** The phone keeps nothing (full, or private): nothing may count as filed. */
  isBroken: boolean
  /** Resolves when it is on the phone. @throws {Error} where the phone does not keep it */
  file: (filing: FileUrgentInput) => Promise<void>
  addPhoto: (reportId: string, jpeg: Blob) => Promise<void>
  tryNow: () => void
}

/** Keeps reports on the phone and sends them: at once, when the signal comes back, when the page is looked at, and by and by. */
export function useUrgentSending(): UrgentSending {
  const [kept, setKept] = useState<KeptUrgent[] | null>(null)
  const [outcome, setOutcome] = useState<UrgentOutcome | null>(null)
  const [isSending, setSending] = useState(false)
  const [isBroken, setBroken] = useState(false)
  const running = useRef(0)

  const look = useCallback(async () => {
    setKept(await keptUrgent())
  }, [])
  const send = useCallback(() => {
    running.current += 1
    setSending(true)
    const changed = () => void look().catch(() => undefined)
    sendUrgent(changed)
      .then(setOutcome)
      .catch(() => setOutcome('no signal'))
      .finally(() => {
        running.current -= 1
        setSending(running.current > 0)
        changed()
      })
  }, [look])

  useEffect(() => {
    dropOldUrgent(Date.now())
      .then(look)
      .then(send)
      .catch(() => setBroken(true))
    const wake = () => {
      if (document.visibilityState === 'visible') send()
    }
    addEventListener('online', wake)
    document.addEventListener('visibilitychange', wake)
    return () => {
      removeEventListener('online', wake)
      document.removeEventListener('visibilitychange', wake)
    }
  }, [look, send])

  const isWaiting = kept?.some(({ state }) => state === 'waiting') === true
  useEffect(() => {
    if (!isWaiting) return
    const timer = setInterval(() => {
      if (running.current === 0) send()
    }, RETRY_MS)
    return () => clearInterval(timer)
  }, [isWaiting, send])

  const keep = useCallback(
    async (work: Promise<void>) => {
      try {
        await work
        await look()
      } catch (error) {
        setBroken(true)
        throw error
      }
      askForSync()
      send()
    },
    [look, send],
  )
  const file = useCallback(
    (filing: FileUrgentInput) => keep(keepFiling(filing, filing.sentAtUtc ?? new Date().toISOString())),
    [keep],
  )
  const addPhoto = useCallback(
    (reportId: string, jpeg: Blob) => keep(keepPhoto(reportId, jpeg, new Date().toISOString())),
    [keep],
  )
  return { kept, outcome, isSending, isBroken, file, addPhoto, tryNow: send }
}

/** Where the browser can, the closed page sends too once there is a signal. */
function askForSync(): void {
  interface WithSync {
    sync?: { register(tag: string): Promise<void> }
  }
  navigator.serviceWorker?.ready
    .then((registration) => (registration as unknown as WithSync).sync?.register('urgent'))
    .catch(() => undefined)
}
