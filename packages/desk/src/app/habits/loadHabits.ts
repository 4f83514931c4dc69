import type { Ledger } from '../../ports/ledger.ts'
import { type Answer, answered } from '../answer.ts'
import { type LearnedModel, learnedModel } from '../model/learnedModel.ts'
import { loadMorning, type Morning } from '../morning/loadMorning.ts'
import { type KeptHabits, keptHabits } from './keptHabits.ts'

export interface LoadedHabits extends KeptHabits, Pick<Morning, 'network' | 'gauges'> {
  learned: LearnedModel
}

/** @param wait  for what is newest, rather than take what was found last */
export async function loadHabits(ledger: Ledger, wait: boolean, signal?: AbortSignal): Promise<Answer<LoadedHabits>> {
  const loaded = await loadMorning(ledger, 'latest')
  if (!loaded.ok) return loaded
  const { network, gauges, range } = loaded.value
  const stoppable = signal === undefined ? {} : { signal }
  const learned = await learnedModel(ledger, { networkId: network.id, gauges, range, ...stoppable })
  const kept = await keptHabits(ledger, { networkId: network.id, learned, range, wait, ...stoppable })
  return answered({ ...kept, network, gauges, learned })
}
