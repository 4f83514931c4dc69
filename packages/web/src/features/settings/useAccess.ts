import type { People } from '@gaugewright/contract'
import { useInfiniteQuery, useMutation, useQuery, useQueryClient } from '@tanstack/react-query'
import {
  peopleKey,
  peopleQuery,
  postAddPerson,
  postChange,
  postForget,
  postPassword,
  postRole,
  trailKey,
  trailQuery,
  whoKey,
  whoQuery,
} from '../../api/access.ts'

export type AccessDesk = ReturnType<typeof useAccess>

/** People, what may be done to them, and the trail: for coordinators alone. */
export function useAccess() {
  const client = useQueryClient()
  const who = useQuery(whoQuery)
  const isShown = who.data?.actor?.role === 'coordinator'
  const people = useQuery({ ...peopleQuery, enabled: isShown })
  const trail = useInfiniteQuery({ ...trailQuery, enabled: isShown })
  const onSuccess = (answer: People) => {
    client.setQueryData(peopleKey, answer)
    void client.invalidateQueries({ queryKey: trailKey })
    // The first password closes a desk that was open; one's own role may have changed.
    void client.invalidateQueries({ queryKey: whoKey })
  }
  return {
    isShown,
    isOpen: who.data?.isOpen === true,
    people,
    trail,
    add: useMutation({ mutationFn: postAddPerson, onSuccess }),
    role: useMutation({ mutationFn: postRole, onSuccess }),
    change: useMutation({ mutationFn: postChange, onSuccess }),
    password: useMutation({ mutationFn: postPassword, onSuccess }),
    forget: useMutation({ mutationFn: postForget, onSuccess }),
  }
}
