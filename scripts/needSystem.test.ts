import { expect, it } from 'vitest'
import { findChromium, usualPaths } from './system/findChromium.ts'
import { isNodeNewEnough } from './system/isNodeNewEnough.ts'

it('findChromium takes CHROMIUM_PATH before the usual paths', () => {
  expect(findChromium({ CHROMIUM_PATH: '/opt/browser' }, () => true)).toBe('/opt/browser')
})

it('findChromium does not pass over a CHROMIUM_PATH that leads nowhere', () => {
  expect(findChromium({ CHROMIUM_PATH: '/opt/browser' }, (path) => path !== '/opt/browser')).toBeNull()
})

it('findChromium takes the first usual path that is there, and null when there is none', () => {
  expect(findChromium({}, (path) => usualPaths.indexOf(path) >= 2)).toBe(usualPaths[2])
  expect(findChromium({ CHROMIUM_PATH: '' }, () => false)).toBeNull()
})

it.each([
  ['20.19.0', true],
  ['20.18.3', false],
  ['18.20.4', false],
  ['22.1.0', true],
  ['24.0.0', true],
])('Node %s is new enough: %s', (version, expected) => {
  expect(isNodeNewEnough(version)).toBe(expected)
})
