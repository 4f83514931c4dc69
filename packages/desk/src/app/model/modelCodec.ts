/** The learned model as text for the ledger's cache. Plain data with typed arrays; a text of another make is refused. */
import { deserialize, serialize } from 'node:v8'
import type { Model } from '@gaugewright/science'

export function textFromModel(model: Model): string {
  return serialize(model).toString('base64')
}

/** @returns null where the text cannot be read: then the model is learned anew, since it is only derived */
export function modelFromText(text: string): Model | null {
  try {
    return deserialize(Buffer.from(text, 'base64')) as Model
  } catch {
    return null
  }
}
