/** What would the map and the area means be, were these readings other than they are? Nothing is stored. */
import type { WhatIf, WhatIfAsk } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { type Answer, answered, refused } from './answer.ts'
import { type AmountChange, withChanges } from './field/dayAmounts.ts'
import { amountsOfMorning, mapOfMorning } from './field/fieldOfMorning.ts'
import { meanAbsoluteChange } from './field/mapChange.ts'
import { wireField } from './field/wireField.ts'
import { type JudgedMorning, judgedMorning } from './morning/judgedMorning.ts'
import { loadMorning } from './morning/loadMorning.ts'

export async function whatIf(ports: Pick<Ports, 'ledger'>, ask: WhatIfAsk): Promise<Answer<WhatIf>> {
  const loaded = await loadMorning(ports.ledger, ask.day)
  if (!loaded.ok) return loaded
  const judged = await judgedMorning(ports.ledger, loaded.value)
  const changes: AmountChange[] = []
  for (const change of ask.changes) {
    const found = changeFrom(judged, change)
    if (found === null) {
      return refused(
        'READING_UNKNOWN',
        `no reading ${change.readingId} around ${judged.morning.day}`,
        'Open the day again; the list shows every reading there is.',
      )
    }
    changes.push(found)
  }
  const map = await mapOfMorning(ports.ledger, judged)
  const amounts = amountsOfMorning(judged)
  const before = wireField(ports.ledger, judged, map, amounts)
  const after = wireField(ports.ledger, judged, map, withChanges(amounts, changes))
  return answered({ before, after, meanAbsoluteChangeMm: meanAbsoluteChange(before.meanMm, after.meanMm) })
}

/** An amount that covers other days than this one alone takes the gauge off this day's map. */
function changeFrom(judged: JudgedMorning, change: WhatIfAsk['changes'][number]): AmountChange | null {
  const { morning, learned } = judged
  const reading = morning.readings.find((row) => row.id === change.readingId)
  const gauge = reading === undefined ? undefined : learned.indexOf.get(reading.gaugeId)
  if (reading === undefined || gauge === undefined) return null
  const firstDay = change.firstDay ?? reading.firstDay
  const lastDay = change.lastDay ?? reading.lastDay
  const isThisDay = firstDay === morning.day && lastDay === morning.day
  const amountMm = change.amountUm === null || !isThisDay ? Number.NaN : change.amountUm / 1000
  return { gauge, amountMm, isTrace: change.isTrace }
}
