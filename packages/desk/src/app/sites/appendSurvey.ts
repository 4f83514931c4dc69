/** A survey into the journal, whoever may save it: the plan sound, its photos drawn anew without where they were taken. */
import type { SaveSurveyAsk } from '@gaugewright/contract'
import { checkYard } from '@gaugewright/science'
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
  const problem = yardProblem(ask.plan, checkYard(ask.plan))
  if (problem !== null) return problem
  const photos: string[] = []
  for (const [index, base64] of ask.photosBase64.entries()) {
    const photo = await ports.redrawPhoto(Buffer.from(base64, 'base64'))
    if (photo === null) {
      return refused(
        'PHOTO_UNREADABLE',
        `photo ${index + 1} cannot be opened`,
        'Send a JPEG, PNG or WebP of at most 3 MB; the plan itself counts without it.',
      )
    }
    const nowUtc = ports.clock.nowUtc()
    const stored = await ports.photos.add({ ...photo, networkId, reportId: ask.id, receivedAtUtc: nowUtc, by })
    photos.push(stored.sha256)
  }
  const { surveyedOn, note, plan } = ask
  const body = { surveyedOn, note, plan, photos }
  await ports.journal.append([newEntry(ports, networkId, about, 'survey', body, { by, id: ask.id })])
  return answered({ isNew: true })
}
