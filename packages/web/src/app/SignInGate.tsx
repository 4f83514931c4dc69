import { useQuery } from '@tanstack/react-query'
import type { ReactNode } from 'react'
import { Redirect, useLocation } from 'wouter'
import { whoQuery } from '../api/access.ts'

/**
 * Lets through who may see the desk. Until the desk has said who asks nothing is drawn; a desk that does not answer is the
 * screens' to tell.
 */
export function SignInGate({ children }: { children: ReactNode }) {
  const [path] = useLocation()
  const who = useQuery(whoQuery)
  if (who.isPending) return null
  if (who.data === undefined) return children
  const { actor } = who.data
  if (actor === null) return <Redirect to={`/sign-in?next=${encodeURIComponent(path)}`} replace />
  if (actor.role === 'observer') {
    location.replace('/my/')
    return null
  }
  return children
}
