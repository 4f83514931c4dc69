import type { NewReading } from '@gaugewright/contract'
import { useCallback, useEffect, useState } from 'react'
import {
  changeReport,
  dropOldReports,
  dropReport,
  type KeptReport,
  keepReport,
  keptReports,
} from '../../api/my/phoneStore.ts'
import { type SendOutcome, sendWaiting } from '../../api/my/sendWaiting.ts'

export interface Reports {
  reports: KeptReport[]
  outcome: SendOutcome | null
  /** Resolves when the report is on the phone for good; it is sent behind that. @throws what the phone's storage says */
  add: (gauge: string, readings: NewReading[]) => Promise<void>
  drop: (seq: number) => Promise<void>
  /** A report that was refused waits again, and is sent. */
  again: (report: KeptReport) => Promise<void>
  send: () => void
}

const TRY_AGAIN_MS = 20_000

/** The reports on this phone, and their sending: at once, when the signal comes back, when the page is looked at again. */
export function useReports(onReceived: () => void): Reports {
  const [reports, setReports] = useState<KeptReport[]>([])
  const [outcome, setOutcome] = useState<SendOutcome | null>(null)
  const read = useCallback(async () => setReports(await keptReports().catch(() => [])), [])
  const send = useCallback(() => {
    const run = async () => {
      const waited = (await keptReports()).some(({ state }) => state === 'waiting')
      const result = await sendWaiting(() => void read())
      setOutcome(result)
      await read()
      if (waited && result === 'all sent') onReceived()
    }
    run().catch(() => setOutcome('no signal'))
  }, [read, onReceived])
  useEffect(() => {
    void dropOldReports(Date.now())
      .catch(() => undefined)
      .then(read)
    send()
    const onSight = () => {
      if (document.visibilityState === 'visible') send()
    }
    const timer = setInterval(onSight, TRY_AGAIN_MS)
    window.addEventListener('online', send)
    document.addEventListener('visibilitychange', onSight)
    return () => {
      clearInterval(timer)
      window.removeEventListener('online', send)
      document.removeEventListener('visibilitychange', onSight)
    }
  }, [read, send])
  const add = async (gauge: string, readings: NewReading[]) => {
    await keepReport({ gauge, readings, madeAtUtc: new Date().toISOString() })
    await read()
    void navigator.storage?.persist?.()
    askToSendWhenClosed()
    send()
  }
  const drop = async (seq: number) => {
    await dropReport(seq)
    await read()
  }
  const again = async (report: KeptReport) => {
    await changeReport({ ...report, state: 'waiting', problem: null })
    await read()
    send()
  }
  return { reports, outcome, add, drop, again, send }
}

/** Where the browser can: it wakes the worker when the signal is back, though the page be closed. */
function askToSendWhenClosed(): void {
  navigator.serviceWorker?.ready
    .then((registration) => (registration as Syncing).sync?.register('send'))
    .catch(() => undefined)
}

interface Syncing extends ServiceWorkerRegistration {
  sync?: { register: (tag: string) => Promise<void> }
}
