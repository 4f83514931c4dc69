import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query'
import { trailKey, whoQuery } from '../../api/access.ts'
import { keysKey, keysQuery, postKey, postRevokeKey } from '../../api/keys.ts'

export type KeyDesk = ReturnType<typeof useKeys>

/** Senders' keys and what may be done with them: for coordinators alone. */
export function useKeys() {
  const client = useQueryClient()
  const who = useQuery(whoQuery)
  const isShown = who.data?.actor?.role === 'coordinator'
  const renewTrail = () => void client.invalidateQueries({ queryKey: trailKey })
  const keys = useQuery({ ...keysQuery, enabled: isShown })
  const add = useMutation({
    mutationFn: postKey,
    // What was made is shown once, and not kept longer than it is on the screen.
    gcTime: 0,
    onSuccess: () => {
      void client.invalidateQueries({ queryKey: keysKey })
      renewTrail()
    },
  })
  const revoke = useMutation({
    mutationFn: postRevokeKey,
    onSuccess: (answer) => {
      client.setQueryData(keysKey, answer)
      renewTrail()
    },
  })
  return { isShown, keys, add, revoke }
}
