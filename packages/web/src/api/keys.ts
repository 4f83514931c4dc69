/** Keys of senders: listed, made, revoked. */
import type { AddKeyAsk, KeyMade, Keys, RevokeKeyAsk } from '@gaugewright/contract'
import { routes } from '@gaugewright/contract'
import { queryOptions } from '@tanstack/react-query'
import { askDesk } from './askDesk.ts'

export const keysKey = ['keys'] as const

export const keysQuery = queryOptions({
  queryKey: keysKey,
  queryFn: ({ signal }) => askDesk<Keys>(routes.listKeys.path, undefined, signal),
})

/** Each throws a ProblemError with the desk's own problem. */
export const postKey = (ask: AddKeyAsk) => askDesk<KeyMade>(routes.addKey.path, ask)
export const postRevokeKey = (ask: RevokeKeyAsk) => askDesk<Keys>(routes.revokeKey.path, ask)

/** The page that describes the machine interface to people. */
export const interfacePagePath = '/api/v1'
