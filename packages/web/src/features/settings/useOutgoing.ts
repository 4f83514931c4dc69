import { isAtLeast, type OutgoingRow, type OutgoingSettings } from '@gaugewright/contract'
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import { whoQuery } from '../../api/access.ts'
import {
  outboxKey,
  outboxQuery,
  outgoingSettingsKey,
  outgoingSettingsQuery,
  postMail,
  postReminders,
  postSettle,
  postTestMail,
  remindedQuery,
} from '../../api/outgoing.ts'

export type OutgoingDesk = ReturnType<typeof useOutgoing>

/** What goes out, for those who send; how it goes out, for coordinators. */
export function useOutgoing() {
  const client = useQueryClient()
  const { data: who } = useQuery(whoQuery)
  const role = who?.actor?.role ?? 'observer'
  const isShown = isAtLeast(role, 'colleague')
  const [lastDiscarded, setLastDiscarded] = useState<OutgoingRow | null>(null)
  const lookAgain = () => void client.invalidateQueries({ queryKey: outboxKey })
  const onSet = (answer: OutgoingSettings) => {
    client.setQueryData(outgoingSettingsKey, answer)
    lookAgain()
  }
  return {
    isShown,
    maySet: role === 'coordinator',
    settings: useQuery({ ...outgoingSettingsQuery, enabled: isShown }),
    outbox: useQuery({ ...outboxQuery, enabled: isShown }),
    whom: useQuery({ ...remindedQuery, enabled: false }),
    mail: useMutation({ mutationFn: postMail, onSuccess: onSet }),
    reminders: useMutation({ mutationFn: postReminders, onSuccess: onSet }),
    test: useMutation({ mutationFn: postTestMail, onSuccess: lookAgain }),
    settle: useMutation({
      mutationFn: postSettle,
      onSuccess: (row) => setLastDiscarded(row.state === 'discarded' ? row : null),
      onSettled: lookAgain,
    }),
    /** What was discarded last here, to be taken back at once. */
    lastDiscarded,
  }
}
