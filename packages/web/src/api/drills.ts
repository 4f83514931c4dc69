/** Drills, as the pages ask the desk about them. */
import type { DrillSettings, DrillsDue, DrillsOfPerson, SittingAsk } from '@gaugewright/contract'
import { routes } from '@gaugewright/contract'
import { queryOptions } from '@tanstack/react-query'
import { askDesk } from './askDesk.ts'

export const saveSitting = (ask: SittingAsk) => askDesk<DrillsOfPerson>(routes.saveSitting.path, ask)
export const askMyDrills = () => askDesk<DrillsOfPerson>(routes.myDrills.path)
export const saveMySitting = (secret: string, ask: SittingAsk) =>
  askDesk<DrillsOfPerson>(routes.saveMySitting.path, { ...ask, secret })
export const askRefresher = (about: string) => askDesk<DrillsOfPerson>(routes.askRefresher.path, { about })
export const setDrills = (ask: DrillSettings) => askDesk<DrillsDue>(routes.setDrills.path, ask)
export const drillsQuery = (about: string) =>
  queryOptions({
    queryKey: ['drills', about],
    queryFn: ({ signal }) =>
      askDesk<DrillsOfPerson>(`${routes.drillsOfPerson.path}?about=${encodeURIComponent(about)}`, undefined, signal),
  })
export const drillsDueQuery = queryOptions({
  queryKey: ['drills due'],
  queryFn: ({ signal }) => askDesk<DrillsDue>(routes.drillsDue.path, undefined, signal),
})
