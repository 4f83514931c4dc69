import type { UrgentSettings } from '@gaugewright/contract'
import { expect, it } from 'vitest'
import { draftOf, settingsOf } from './urgentSettingsView.ts'

const settings: UrgentSettings = {
  severeHailMm: 25.4,
  significantHailMm: 50.8,
  severeGustMps: 25.93,
  severeSnowMmPerH: 25.4,
  guidance: [
    { minutes: 15, amountUm: 15_240 },
    { minutes: 60, amountUm: 25_400 },
  ],
  emergencyNumber: null,
  officeName: '',
  stateCode: '',
  destinations: [{ name: 'Desk', way: 'mail', to: 'desk@office.invalid' }],
  passOnRule: null,
}

it('shows the network’s units: inches and miles an hour, or millimetres and km/h', () => {
  expect(draftOf(settings, 'in')).toMatchObject({ severeHail: '1.00', significantHail: '2.00', severeGust: '58' })
  expect(draftOf(settings, 'mm')).toMatchObject({ severeHail: '25.4', severeGust: '93' })
  expect(draftOf(settings, 'in').guidance.map(({ amount }) => amount)).toEqual(['0.60', '1.00'])
})

it('what is not changed keeps its exact value, though it is shown rounded', () => {
  for (const unit of ['in', 'mm'] as const) {
    expect(settingsOf(draftOf(settings, unit), settings, unit)).toEqual({ settings })
  }
})

it('takes a decimal comma, and names the field that is no number', () => {
  const draft = { ...draftOf(settings, 'in'), severeHail: '0,75' }
  expect(settingsOf(draft, settings, 'in')).toMatchObject({ settings: { severeHailMm: expect.closeTo(19.05, 9) } })
  expect(settingsOf({ ...draft, severeGust: 'strong' }, settings, 'in')).toEqual({ wrong: 'severeGust' })
  expect(settingsOf({ ...draft, significantHail: ' ' }, settings, 'in')).toEqual({ wrong: 'significantHail' })
})

it('a rule goes to the first destination where none was chosen', () => {
  const draft = draftOf(settings, 'mm')
  const on = settingsOf({ ...draft, rule: { ...draft.rule, isOn: true, odds: '0.97', to: '' } }, settings, 'mm')
  expect(on).toMatchObject({
    settings: { passOnRule: { atLeast: 'significant', oddsAtLeast: 0.97, destination: 'Desk', form: 'storm report' } },
  })
})
