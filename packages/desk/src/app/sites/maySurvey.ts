import { type Actor, isAtLeast } from '@gaugewright/contract'
import { refused } from '../answer.ts'
import type { SiteBehind } from './siteBehind.ts'

/** Those who work at the desk see and save every site; an observer those of their own gauges. Null where they may. */
export function maySurvey(actor: Actor, site: SiteBehind): ReturnType<typeof refused> | null {
  if (isAtLeast(actor.role, 'colleague') || (site.gauge !== null && actor.gauges.includes(site.gauge.id))) return null
  return refused(
    'GAUGE_NOT_YOURS',
    `the site of ${site.name}`,
    'Only its observer and the desk see the plan of a yard.',
  )
}
