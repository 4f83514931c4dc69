import { describe, expect, it } from 'vitest'
import { messages } from '../words/messages.ts'
import { screenOfKey, screens } from './screens.ts'

const press = (key: string, over: object = {}) =>
  screenOfKey({ key, ctrlKey: false, altKey: false, metaKey: false, ...over })

describe('screens', () => {
  it('each has a path, a key and a name of its own, in both languages', () => {
    for (const of of ['path', 'key', 'id'] as const) {
      expect(new Set(screens.map((screen) => screen[of])).size).toBe(screens.length)
    }
    for (const { id } of screens) for (const words of Object.values(messages)) expect(words.screens[id]).toBeTruthy()
  })

  it('an address belongs to one screen: days to Today, wherever they lie', () => {
    const at = (path: string) => screens.filter(({ holds }) => holds(path)).map(({ id }) => id)
    expect(at('/')).toEqual(['today'])
    expect(at('/days/2026-07-16')).toEqual(['today'])
    expect(at('/urgent')).toEqual(['urgent'])
    expect(at('/gauges')).toEqual(['gauges'])
    expect(at('/gauges/N1NYK')).toEqual(['gauges'])
    expect(at('/settings')).toEqual(['settings'])
    expect(at('/nowhere')).toEqual([])
  })

  it('a digit goes to its screen; chords and other keys belong to others', () => {
    expect(press('1')?.id).toBe('today')
    expect(press('2')?.id).toBe('urgent')
    expect(press('3')?.id).toBe('gauges')
    expect(press('8')?.id).toBe('settings')
    expect(press('1', { ctrlKey: true })).toBeNull()
    expect(press('s')).toBeNull()
  })
})
