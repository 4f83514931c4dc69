/** Whether to ask back: the desk judges beside the morning's neighbours; out of its reach, the phone by the own climate. */
import type { CheckEntryAsk, MyGauge, WireEntryQuestion } from '@gaugewright/contract'
import { epochDayFromIso, isoFromEpochDay } from '@gaugewright/science'
import { askCheck } from '../../api/my/myQueries.ts'
import type { TypedAmount } from './amountText.ts'
import { checkOnPhone } from './checkOnPhone.ts'
import type { Known } from './entryDays.ts'

export async function checkEntry(
  ask: CheckEntryAsk,
  amount: TypedAmount,
  gauge: MyGauge,
  known: readonly Known[],
): Promise<WireEntryQuestion | null> {
  try {
    return await askCheck(ask)
  } catch {
    const firstDay = epochDayFromIso(ask.firstDay)
    const dayBefore = isoFromEpochDay(firstDay - 1)
    const previous = gauge.readings.find(({ lastDay }) => lastDay === dayBefore)
    const isKnown = previous !== undefined && known.some(({ lastDay }) => lastDay === dayBefore)
    return checkOnPhone(gauge.climate, {
      ...amount,
      firstDay,
      lastDay: epochDayFromIso(ask.lastDay),
      previousUm: isKnown ? previous.amountUm : null,
    })
  }
}
