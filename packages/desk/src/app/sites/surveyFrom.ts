/** A survey as the wire shows it, with what its plan says: pure. */
import type { Survey } from '@gaugewright/contract'
import { checkYard, exposureClass, skylineAt, type YardPlan } from '@gaugewright/science'
import type { Read } from '../people/journalBody.ts'

export function surveyFrom({ entry, body }: Read<'survey'>, nameOf: (personId: string) => string): Survey {
  return {
    id: entry.id,
    about: entry.about,
    surveyedOn: body.surveyedOn,
    savedAtUtc: entry.atUtc,
    by: nameOf(entry.by),
    note: body.note,
    plan: body.plan,
    photos: body.photos,
    isTakenBack: entry.takenBack !== null,
    exposure: exposureOf(body.plan),
  }
}

/** Null where no gauge stands on the plan. */
export function exposureOf(plan: YardPlan): Survey['exposure'] {
  if (plan.gauge === null || checkYard(plan).some(({ weight }) => weight === 'fault')) return null
  const skyline = skylineAt(plan, plan.gauge.at, plan.gauge.rimM)
  const { slopeDeg } = plan
  const exposure = exposureClass(skyline, { slopeDeg, hasWindShield: plan.gauge.hasWindShield })
  return { class: exposure.class, worstDeg: skyline.worstDeg, blockedShare: skyline.blockedShare }
}
