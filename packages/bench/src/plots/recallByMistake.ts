/** Of the wrong readings of each mistake, how many are found at 1 % false alarms; kinds that were put in go under our names. */
import { type Mistake, mistakes } from '@gaugewright/science'
import type { FindingScores } from '../score/scoreFindings.ts'
import { wilsonInterval } from '../score/wilsonInterval.ts'

export interface MistakeRecall {
  mistake: Mistake | 'all'
  count: number
  recall: number
  low: number
  high: number
}

/** All mistakes together first, then each that has cases, in the order of the list of mistakes. */
export function recallByMistake({ kinds }: Pick<FindingScores, 'kinds'>): MistakeRecall[] {
  return (['all', ...mistakes] as const).flatMap((mistake) => {
    const own = kinds.filter((kind) => mistake === 'all' || kind.mistake === mistake)
    const count = own.reduce((sum, kind) => sum + kind.count, 0)
    const found = own.reduce((sum, kind) => sum + kind.found, 0)
    return count === 0 ? [] : [{ mistake, count, recall: found / count, ...wilsonInterval(found, count) }]
  })
}
