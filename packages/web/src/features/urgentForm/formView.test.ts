import { urgentKinds } from '@gaugewright/contract'
import { expect, it } from 'vitest'
import { hashOf, isFormHash, viewFromHash } from './formView.ts'

it('each view of the form has an address of its own', () => {
  for (const view of [
    { at: 'start' },
    { at: 'first', kind: 'hail' },
    { at: 'first', kind: 'snow' },
    { at: 'report', reportId: '0198c0de-0000-7000-8000-000000000001' },
  ] as const) {
    expect(viewFromHash(hashOf(view))).toEqual(view)
    expect(isFormHash(hashOf(view))).toBe(true)
  }
})

it('what is no view of it leads to its start, and other addresses are not its own', () => {
  expect(viewFromHash('#urgent/frogs')).toEqual({ at: 'start' })
  expect(viewFromHash('#urgent/report/')).toEqual({ at: 'start' })
  expect([isFormHash('#urgently'), isFormHash('#record'), isFormHash('')]).toEqual([false, false, false])
})

it('every kind of report has its view', () => {
  for (const kind of urgentKinds) expect(viewFromHash(`#urgent/${kind}`)).toEqual({ at: 'first', kind })
})
