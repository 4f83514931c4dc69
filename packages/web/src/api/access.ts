/** Signing in and out, people, and the trail. */
import type {
  AddPersonAsk,
  AuditTrail,
  ChangePersonAsk,
  LinkAsked,
  People,
  PersonAsk,
  SetPasswordAsk,
  SetRoleAsk,
  SignedOut,
  SignInAsk,
  Who,
} from '@gaugewright/contract'
import { routes } from '@gaugewright/contract'
import { infiniteQueryOptions, queryOptions } from '@tanstack/react-query'
import { askDesk } from './askDesk.ts'

export const whoKey = ['who'] as const
export const peopleKey = ['people'] as const
export const trailKey = ['trail'] as const

export const whoQuery = queryOptions({
  queryKey: whoKey,
  queryFn: ({ signal }) => askDesk<Who>(routes.who.path, undefined, signal),
  staleTime: 300_000,
})

export const peopleQuery = queryOptions({
  queryKey: peopleKey,
  queryFn: ({ signal }) => askDesk<People>(routes.listPeople.path, undefined, signal),
})

const TRAIL_PAGE = 25

export const trailQuery = infiniteQueryOptions({
  queryKey: trailKey,
  queryFn: ({ signal, pageParam }) => {
    const before = pageParam === null ? '' : `&before=${encodeURIComponent(pageParam)}`
    return askDesk<AuditTrail>(`${routes.auditTrail.path}?limit=${TRAIL_PAGE}${before}`, undefined, signal)
  },
  initialPageParam: null as string | null,
  getNextPageParam: ({ entries, more }) => (more ? (entries.at(-1)?.id ?? null) : null),
})

/** Each throws a ProblemError with the desk's own problem. */
export const postSignIn = (ask: SignInAsk) => askDesk<Who>(routes.signIn.path, ask)
export const postAskLink = (mail: string) => askDesk<LinkAsked>(routes.askLink.path, { mail })
export const postUseLink = (link: string) => askDesk<Who>(routes.useLink.path, { link })
export const postSignOut = () => askDesk<SignedOut>(routes.signOut.path, {})
export const postAddPerson = (ask: AddPersonAsk) => askDesk<People>(routes.addPerson.path, ask)
export const postRole = (ask: SetRoleAsk) => askDesk<People>(routes.setRole.path, ask)
export const postChange = (ask: ChangePersonAsk) => askDesk<People>(routes.changePerson.path, ask)
export const postPassword = (ask: SetPasswordAsk) => askDesk<People>(routes.setPassword.path, ask)
export const postForget = (ask: PersonAsk) => askDesk<People>(routes.forgetPerson.path, ask)

/** Where everything held on a person is fetched as a file. */
export const exportPersonPath = (personId: string) =>
  routes.exportPerson.path.replace(':person', encodeURIComponent(personId))
