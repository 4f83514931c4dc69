/** People as files, as Settings asks for them. */
import type { DuplicatePeople, ImportedPeople, ImportPeopleAsk } from '@gaugewright/contract'
import { routes } from '@gaugewright/contract'
import { queryOptions } from '@tanstack/react-query'
import { askDesk } from './askDesk.ts'

export const importPeople = (ask: ImportPeopleAsk) => askDesk<ImportedPeople>(routes.importPeople.path, ask)
export const duplicatesQuery = queryOptions({
  queryKey: ['duplicates'],
  queryFn: ({ signal }) => askDesk<DuplicatePeople>(routes.duplicatePeople.path, undefined, signal),
})
