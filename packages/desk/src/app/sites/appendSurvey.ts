/**
 * A survey into the journal, whoever may save it: the plan sound, its photos drawn anew without where they were taken.
 * Photos may come alone, before anybody has drawn the yard.
 */
import type { SaveSurveyAsk, SurveyPhoto } from '@gaugewright/contract'
import { checkYard, isDrawn } from '@gaugewright/science'
import type { CleanPhoto } from '../../ports/photos.ts'
import type { Ports } from '../../ports/ports.ts'
import { type Answer, answered, refused } from '../answer.ts'
import { newEntry } from '../people/writeEntry.ts'
import { yardProblem } from './yardProblem.ts'

export async function appendSurvey(
  ports: Pick<Ports, 'journal' | 'photos' | 'redrawPhoto' | 'clock' | 'newId'>,
  { networkId, about, by }: { networkId: string; about: string; by: string },
  ask: Omit<SaveSurveyAsk, 'about'>,
): Promise<Answer<{ isNew: boolean }>> {
  const known = await ports.journal.entry(networkId, ask.id)
  if (known !== null) {
    if (known.about === about && known.kind === 'survey') return answered({ isNew: false })
    return refused('SURVEY_ID_TAKEN', `the id "${ask.id}"`, 'Save the survey with a fresh id.')
  }
  const isPhotosAlone = ask.photos.length > 0 && !isDrawn(ask.plan)
  const problem = isPhotosAlone ? null : yardProblem(ask.plan, checkYard(ask.plan))
  if (problem !== null) return problem
  const clean: (CleanPhoto & Pick<SurveyPhoto, 'equivalentMm'>)[] = []
  for (const [index, { imageBase64, equivalentMm }] of ask.photos.entries()) {
    const photo = await ports.redrawPhoto(Buffer.from(imageBase64, 'base64'))
    if (photo === null) {
      return refused(
        'PHOTO_UNREADABLE',
        `photo ${index + 1} cannot be opened`,
        'Send a JPEG, PNG or WebP of at most 3 MB; the plan itself counts without it.',
      )
    }
    clean.push({ ...photo, equivalentMm })
  }
  const photos = await keepPhotos(ports, { networkId, reportId: ask.id, by }, clean)
  const { surveyedOn, note, plan } = ask
  const body = { surveyedOn, note, plan, photos }
  await ports.journal.append([newEntry(ports, networkId, about, 'survey', body, { by, id: ask.id })])
  return answered({ isNew: true })
}

/** All of them, or none: a photo that no survey speaks of would outlive its person. */
async function keepPhotos(
  ports: Pick<Ports, 'photos' | 'clock'>,
  place: { networkId: string; reportId: string; by: string },
  clean: readonly (CleanPhoto & Pick<SurveyPhoto, 'equivalentMm'>)[],
): Promise<SurveyPhoto[]> {
  const kept: SurveyPhoto[] = []
  try {
    for (const { equivalentMm, ...photo } of clean) {
      const { sha256 } = await ports.photos.add({ ...photo, ...place, receivedAtUtc: ports.clock.nowUtc() })
      kept.push({ sha256, equivalentMm })
    }
  } catch (error) {
    await ports.photos.erase(place.networkId, place.reportId)
    throw error
  }
  return kept
}
