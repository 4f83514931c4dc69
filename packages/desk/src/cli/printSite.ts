import type { Site, SitesDue } from '@gaugewright/contract'
import { plainTable } from './plainTable.ts'

export function printSite({ about, name, due, surveys }: Site): string {
  const head = `${name} (${about}): ${due === 'not yet' ? 'no survey is due' : due}\n`
  if (surveys.length === 0) return `${head}No survey was made.\n`
  const table = plainTable(['surveyed', 'by', 'class', 'worst angle', 'sky hidden', 'note', 'id'])
  for (const { surveyedOn, by, exposure, note, isTakenBack, id } of surveys) {
    table.push([
      surveyedOn,
      by,
      exposure === null ? '' : String(exposure.class),
      exposure === null ? '' : `${exposure.worstDeg.toFixed(1)}°`,
      exposure === null ? '' : `${Math.round(exposure.blockedShare * 100)} %`,
      isTakenBack ? `${note} (taken back)`.trim() : note,
      id,
    ])
  }
  return `${head}${table.toString()}\n`
}

export function printSitesDue({ sites }: SitesDue, all: boolean): string {
  const shown = all ? sites : sites.filter(({ due }) => due !== 'not yet')
  if (shown.length === 0) return 'No site is due for a survey.\n'
  const table = plainTable(['gauge', 'name', 'survey', 'last', 'class', 'why'])
  for (const { code, name, due, surveyedOn, class: exposure, why } of shown) {
    table.push([code, name, due, surveyedOn ?? '', exposure === null ? '' : String(exposure), why])
  }
  return `${table.toString()}\n`
}
