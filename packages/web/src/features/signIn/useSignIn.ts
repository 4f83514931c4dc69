import type { Who } from '@gaugewright/contract'
import { useMutation } from '@tanstack/react-query'
import { useEffect, useRef } from 'react'
import { postAskLink, postSignIn, postUseLink } from '../../api/access.ts'
import { linkIn } from './signInView.ts'

/** The three ways in: password, asking for a link, and using the one in the address. */
export function useSignIn(onSignedIn: (who: Who) => void) {
  const password = useMutation({ mutationFn: postSignIn, onSuccess: onSignedIn })
  const ask = useMutation({ mutationFn: postAskLink })
  const use = useMutation({ mutationFn: postUseLink, onSuccess: onSignedIn })
  const isUsed = useRef(false)
  const takeLink = use.mutate
  useEffect(() => {
    const link = linkIn(location.hash)
    if (link === null || isUsed.current) return
    isUsed.current = true
    // Out of the address, and so out of the history, before anything else happens.
    history.replaceState(history.state, '', location.pathname + location.search)
    takeLink(link)
  }, [takeLink])
  return { password, ask, use }
}
