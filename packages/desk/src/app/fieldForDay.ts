/** The rain field of one observing day over the network's map, from the accepted record. */
import type { DayField } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { type Answer, answered } from './answer.ts'
import { amountsOfMorning, mapOfMorning } from './field/fieldOfMorning.ts'
import { wireField } from './field/wireField.ts'
import { judgedMorning } from './morning/judgedMorning.ts'
import { loadMorning } from './morning/loadMorning.ts'

export interface FieldForDayAsk {
  /** ISO date, or `latest`. */
  day: string
}

export async function fieldForDay(ports: Pick<Ports, 'ledger'>, ask: FieldForDayAsk): Promise<Answer<DayField>> {
  const loaded = await loadMorning(ports.ledger, ask.day)
  if (!loaded.ok) return loaded
  const judged = await judgedMorning(ports.ledger, loaded.value)
  const map = await mapOfMorning(ports.ledger, judged)
  return answered(wireField(ports.ledger, judged, map, amountsOfMorning(judged)))
}
