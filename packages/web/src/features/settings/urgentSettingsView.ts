/** What is typed for the urgent settings, in the network's units, and back. Pure. */
import type { UrgentSettings } from '@gaugewright/contract'

export type Unit = 'mm' | 'in'

export interface UrgentDraft {
  severeHail: string
  significantHail: string
  severeGust: string
  severeSnow: string
  guidance: { minutes: number; amount: string }[]
  emergencyNumber: string
  officeName: string
  stateCode: string
  destinations: UrgentSettings['destinations']
  rule: { isOn: boolean; atLeast: 'severe' | 'significant'; odds: string; form: 'storm report' | 'SHEF'; to: string }
}

const mmPer = { mm: 1, in: 25.4 } as const
const mpsPer = { mm: 1 / 3.6, in: 0.44704 } as const
const usualOdds = 0.95

export const gustUnit = { mm: 'km/h', in: 'mph' } as const

export function draftOf(settings: UrgentSettings, unit: Unit): UrgentDraft {
  const depth = (mm: number): string => plain(mm / mmPer[unit], unit === 'in' ? 2 : 1)
  const { passOnRule: rule, destinations } = settings
  return {
    severeHail: depth(settings.severeHailMm),
    significantHail: depth(settings.significantHailMm),
    severeGust: plain(settings.severeGustMps / mpsPer[unit], 0),
    severeSnow: depth(settings.severeSnowMmPerH),
    guidance: settings.guidance.map(({ minutes, amountUm }) => ({ minutes, amount: depth(amountUm / 1000) })),
    emergencyNumber: settings.emergencyNumber ?? '',
    officeName: settings.officeName,
    stateCode: settings.stateCode,
    destinations: destinations.map((destination) => ({ ...destination })),
    rule: {
      isOn: rule !== null,
      atLeast: rule?.atLeast ?? 'significant',
      odds: String(rule?.oddsAtLeast ?? usualOdds),
      form: rule?.form ?? 'storm report',
      to: rule?.destination ?? destinations[0]?.name ?? '',
    },
  }
}

/**
 * What was typed, as settings; what was not changed keeps its exact value. Else the name of the field that is no number.
 * @param before  the settings that the draft was made from
 */
export function settingsOf(
  draft: UrgentDraft,
  before: UrgentSettings,
  unit: Unit,
): { settings: UrgentSettings } | { wrong: keyof UrgentDraft } {
  const shown = draftOf(before, unit)
  let wrong: keyof UrgentDraft | null = null
  const value = (
    name: keyof UrgentDraft,
    typed: string,
    was: string | undefined,
    exact: number,
    per: number,
  ): number => {
    if (typed.trim() === was) return exact
    const found = Number(typed.trim().replace(',', '.'))
    if (typed.trim() !== '' && Number.isFinite(found)) return found * per
    wrong ??= name
    return exact
  }
  const mm = mmPer[unit]
  const { rule } = draft
  const settings: UrgentSettings = {
    severeHailMm: value('severeHail', draft.severeHail, shown.severeHail, before.severeHailMm, mm),
    significantHailMm: value(
      'significantHail',
      draft.significantHail,
      shown.significantHail,
      before.significantHailMm,
      mm,
    ),
    severeGustMps: value('severeGust', draft.severeGust, shown.severeGust, before.severeGustMps, mpsPer[unit]),
    severeSnowMmPerH: value('severeSnow', draft.severeSnow, shown.severeSnow, before.severeSnowMmPerH, mm),
    guidance: draft.guidance.map(({ minutes, amount }, index) => {
      const was = before.guidance[index]?.amountUm ?? 0
      const amountUm = value('guidance', amount, shown.guidance[index]?.amount, was, 1000 * mm)
      return { minutes, amountUm: Math.round(amountUm) }
    }),
    emergencyNumber: draft.emergencyNumber.trim() || null,
    officeName: draft.officeName.trim(),
    stateCode: draft.stateCode.trim().toUpperCase(),
    destinations: draft.destinations,
    passOnRule: rule.isOn
      ? {
          atLeast: rule.atLeast,
          oddsAtLeast: value('rule', rule.odds, undefined, usualOdds, 1),
          form: rule.form,
          destination: rule.to || (draft.destinations[0]?.name ?? ''),
        }
      : null,
  }
  return wrong === null ? { settings } : { wrong }
}

function plain(value: number, digits: number): string {
  return value.toFixed(digits)
}
