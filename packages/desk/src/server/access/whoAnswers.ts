import { type Actor, ownerAtTheDesk, type Who } from '@gaugewright/contract'

export function whoAnswers(actor: Actor | null): Who {
  return { actor, isOpen: actor?.personId === ownerAtTheDesk.personId }
}
