/** Sites and their surveys, as the screens ask for them. */
import type { AskSurveyAsk, Contacts, SaveSurveyAsk, Site, SitesDue, WithdrawSurveyAsk } from '@gaugewright/contract'
import { routes } from '@gaugewright/contract'
import { queryOptions } from '@tanstack/react-query'
import { askDesk } from './askDesk.ts'

export const siteKey = (about: string) => ['site', about] as const

export const askSite = (about: string, signal?: AbortSignal) =>
  askDesk<Site>(`${routes.readSite.path}?about=${encodeURIComponent(about)}`, undefined, signal)

export const siteQuery = (about: string) =>
  queryOptions({
    queryKey: siteKey(about),
    queryFn: ({ signal }) => askSite(about, signal),
  })

export const sitesDueQuery = queryOptions({
  queryKey: ['sitesDue'],
  queryFn: ({ signal }) => askDesk<SitesDue>(routes.sitesDue.path, undefined, signal),
})

export function reportUrl(about: string): string {
  return `${routes.siteReport.path}?about=${encodeURIComponent(about)}`
}

export const saveSurvey = (ask: SaveSurveyAsk) => askDesk<Site>(routes.saveSurvey.path, ask)
export const askSurvey = (ask: AskSurveyAsk) => askDesk<Site>(routes.askSurvey.path, ask)
export const withdrawSurvey = (ask: WithdrawSurveyAsk) => askDesk<Site>(routes.withdrawSurvey.path, ask)
export const sendSiteReport = (about: string) => askDesk<Contacts>(routes.sendSiteReport.path, { about })
