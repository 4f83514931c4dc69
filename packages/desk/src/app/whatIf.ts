/**
 * What would a decision do, were it made: to the map, to the area means, to what is found of the other readings and to
 * what is left to decide? Told by judging the morning as it would then be; nothing is stored.
 */
import { mostChangedFindings, type WhatIf, type WhatIfAsk } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { type Answer, answered } from './answer.ts'
import { amountsOfMorning, mapOfMorning } from './field/fieldOfMorning.ts'
import { meanAbsoluteChange } from './field/mapChange.ts'
import { wireField } from './field/wireField.ts'
import { changedFindings } from './morning/changedFindings.ts'
import { judgedIf, judgedMorning } from './morning/judgedMorning.ts'
import { loadMorning } from './morning/loadMorning.ts'
import { supposedDecisions } from './supposedDecisions.ts'

export async function whatIf({ ledger }: Pick<Ports, 'ledger'>, ask: WhatIfAsk): Promise<Answer<WhatIf>> {
  const loaded = await loadMorning(ledger, ask.day)
  if (!loaded.ok) return loaded
  const supposed = supposedDecisions(loaded.value, ask.changes)
  if (!supposed.ok) return supposed
  const judged = await judgedMorning(ledger, loaded.value)
  const judgedThen = judgedIf(ledger, judged, supposed.value)
  const map = await mapOfMorning(ledger, judged)
  const before = wireField(ledger, judged, map, amountsOfMorning(judged))
  const after = wireField(ledger, judgedThen, map, amountsOfMorning(judgedThen))
  const decided = new Set(ask.changes.map(({ readingId }) => readingId))
  const { changed, toDecideBefore, toDecideAfter } = changedFindings(judged, judgedThen, decided)
  return answered({
    before,
    after,
    meanAbsoluteChangeMm: meanAbsoluteChange(before.meanMm, after.meanMm),
    findings: changed.slice(0, mostChangedFindings),
    findingCount: changed.length,
    toDecideBefore,
    toDecideAfter,
  })
}
