import { expect, it } from 'vitest'
import { fillMarkers } from './fillMarkers.ts'

const document =
  'Before.\n<!-- bench:rain -->\nold\n<!-- /bench:rain -->\nBetween.\n<!-- bench:sun -->\n<!-- /bench:sun -->\nAfter.\n'

it('fillMarkers changes what stands between the markers and nothing else, twice as once', () => {
  const once = fillMarkers(document, { sun: '| a |', rain: '12.5 mm\n' })
  expect(once).toBe(
    'Before.\n<!-- bench:rain -->\n12.5 mm\n<!-- /bench:rain -->\nBetween.\n<!-- bench:sun -->\n| a |\n<!-- /bench:sun -->\nAfter.\n',
  )
  expect(fillMarkers(once, { sun: '| a |', rain: '12.5 mm' })).toBe(once)
})

it('fillMarkers names a marker that is not there', () => {
  expect(() => fillMarkers(document, { snow: '' })).toThrow('<!-- bench:snow -->')
})
