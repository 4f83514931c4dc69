import type { PassOnForm } from '@gaugewright/contract'
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query'
import { useEffect, useState } from 'react'
import { postUrgentAct, type UrgentAct, urgentKey, urgentQuery } from '../../api/urgent.ts'
import { useUrgentLineState } from '../../api/useUrgentLine.ts'
import { useSingleKeys } from '../../hooks/useSingleKeys.ts'
import { useWords } from '../../words/WordsContext.tsx'
import { lastUndoable, stepFrom } from './urgentView.ts'

export type UrgentDialog = 'pass on' | 'close' | null
export type UrgentDesk = ReturnType<typeof useUrgent>

/** The list, the chosen report, and what is done with it. The address holds the choice. */
export function useUrgent(chosenId: string | null, onGo: (id: string) => void) {
  const client = useQueryClient()
  const { words } = useWords()
  const list = useQuery(urgentQuery)
  const line = useUrgentLineState()
  const [dialog, setDialog] = useState<UrgentDialog>(null)
  const nowMs = useNow()
  const items = list.data?.items ?? []
  const shownId = chosenId ?? items[0]?.report.id ?? null
  const shown = items.find(({ report }) => report.id === shownId) ?? null
  const act = useMutation({
    mutationFn: (ask: UrgentAct) => postUrgentAct(ask),
    onSuccess: (answer) => {
      client.setQueryData(urgentKey, answer)
      setDialog(null)
    },
  })
  const id = shown?.report.id ?? null
  const undoable = shown === null ? null : lastUndoable(shown)
  const step = (by: 1 | -1) => {
    const next = stepFrom(items, shownId, by)
    if (next !== null) onGo(next)
  }
  const markSeen = () => {
    if (id !== null && shown?.state === 'new') act.mutate({ act: 'seen', reportId: id })
  }
  const undo = (eventId: string | null) => {
    if (eventId !== null) act.mutate({ act: 'undo', eventId })
  }
  const open = (which: UrgentDialog) => {
    act.reset()
    if (shown !== null) setDialog(which)
  }
  useSingleKeys({
    j: () => step(1),
    k: () => step(-1),
    s: markSeen,
    p: () => open('pass on'),
    c: () => shown?.state !== 'closed' && open('close'),
    u: () => undo(undoable),
  })
  return {
    list,
    line,
    items,
    shown,
    shownId,
    nowMs,
    dialog,
    open,
    undoable,
    markSeen,
    undo,
    passOn: (form: PassOnForm, destination: string | null) =>
      id === null ? undefined : act.mutate({ act: 'pass on', reportId: id, form, destination }),
    close: (why: string) => (id === null ? undefined : act.mutate({ act: 'close', reportId: id, why })),
    isActing: act.isPending,
    actError: act.error,
    forgetError: () => act.reset(),
    closeWhys: words.urgent.closeWhys,
  }
}

/** The time, anew every twenty seconds: ages are shown in minutes. */
function useNow(): number {
  const [now, setNow] = useState(() => Date.now())
  useEffect(() => {
    const timer = setInterval(() => setNow(Date.now()), 20_000)
    return () => clearInterval(timer)
  }, [])
  return now
}
