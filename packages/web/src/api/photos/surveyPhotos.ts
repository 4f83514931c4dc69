/**
 * Photos that go with a survey. Each is drawn anew before it leaves the device, so that where and with what it was taken
 * stays behind; its angle of view goes beside it, for angles are measured by it.
 */
import { type NewSurveyPhoto, routes } from '@gaugewright/contract'
import { reach, readAnswer } from '../askDesk.ts'
import { ProblemError } from '../problemError.ts'
import { base64Of } from './base64Of.ts'
import { redrawOnPhone } from './redrawOnPhone.ts'

export interface PhotoToKeep {
  file: Blob
  equivalentMm: number | null
}

/** @throws {ProblemError} PHOTO_UNREADABLE */
export async function photosToSend(photos: readonly PhotoToKeep[]): Promise<NewSurveyPhoto[]> {
  const drawn: NewSurveyPhoto[] = []
  // One after the other: a phone has little room for open pictures.
  for (const { file, equivalentMm } of photos) {
    const picture = await redrawOnPhone(file)
    if (picture === null) throw new ProblemError({ code: 'PHOTO_UNREADABLE', seen: file.type, advice: '' })
    drawn.push({ imageBase64: await base64Of(picture.jpeg), equivalentMm })
  }
  return drawn
}

/** A photo that the desk keeps. @throws {ProblemError} */
export async function askPhoto(sha256: string): Promise<Blob> {
  const path = photoPath(sha256)
  const response = await reach(path, {})
  return response.ok ? await response.blob() : await readAnswer(response, path)
}

export function photoPath(sha256: string): string {
  return routes.photo.path.replace(':sha256', sha256)
}
