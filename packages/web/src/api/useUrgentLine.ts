/** The page's live line as React sees it. App starts it once; screens ask for its state. */

import type { UrgentNow } from '@gaugewright/contract'
import { useQueryClient } from '@tanstack/react-query'
import { useEffect, useSyncExternalStore } from 'react'
import { takeLive, urgentKey } from './urgent.ts'
import { type LineState, UrgentLine } from './urgentLine.ts'

/** Several events at once ask for the whole list once, and a storm of them no more often than this; each new report is shown at once. */
const TOGETHER_MS = 400
const BETWEEN_MS = 2_000

let state: LineState = 'connecting'
const listeners = new Set<() => void>()
const publish = (next: LineState): void => {
  state = next
  for (const listener of [...listeners]) listener()
}
const onState = (listener: () => void): (() => void) => {
  listeners.add(listener)
  return () => void listeners.delete(listener)
}

/**
 * Keeps the list of urgent reports up to date on every screen.
 * @param isWanted  once the list has come: the line goes on from there
 */
export function useUrgentLineOpen(isWanted: boolean, onFiled: () => void): void {
  const client = useQueryClient()
  useEffect(() => {
    if (!isWanted || typeof EventSource === 'undefined') return
    const own = new UrgentLine(() => client.getQueryData<UrgentNow>(urgentKey)?.lastEvent ?? null)
    const unwatch = own.onState(() => publish(own.state))
    let timer: ReturnType<typeof setTimeout> | undefined
    let askedAtMs = 0
    const forget = own.onLive((live) => {
      takeLive(client, live)
      if (live.what === 'filed') onFiled()
      timer ??= setTimeout(
        () => {
          timer = undefined
          askedAtMs = Date.now()
          void client.invalidateQueries({ queryKey: urgentKey })
        },
        Math.max(TOGETHER_MS, askedAtMs + BETWEEN_MS - Date.now()),
      )
    })
    own.start()
    return () => {
      forget()
      unwatch()
      clearTimeout(timer)
      own.stop()
      publish('connecting')
    }
  }, [client, isWanted, onFiled])
}

export function useUrgentLineState(): LineState {
  return useSyncExternalStore(onState, () => state)
}
