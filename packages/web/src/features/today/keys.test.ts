import { describe, expect, it } from 'vitest'
import { messages } from '../../words/messages.ts'
import { actOfKey, keyList } from './keys.ts'

const press = (key: string, over: object = {}) =>
  actOfKey({ key, ctrlKey: false, altKey: false, metaKey: false, shiftKey: false, ...over })

describe('actOfKey', () => {
  it('gives one act to a key, and no key two', () => {
    const all = keyList.flatMap(({ keys }) => keys)
    expect(new Set(all).size).toBe(all.length)
    expect(press('s')).toBe('stands')
    expect(press('ArrowDown')).toBe('next')
    expect(press('z')).toBeNull()
  })
  it('leaves chords to the browser, but takes brackets typed with AltGr', () => {
    expect(press('a', { ctrlKey: true })).toBeNull()
    expect(press('u', { metaKey: true })).toBeNull()
    expect(press('s', { altKey: true })).toBeNull()
    expect(press('[', { altKey: true })).toBe('previousDay')
  })
  it('Caps Lock changes nothing; Shift with A amends at once', () => {
    expect(press('S')).toBe('stands')
    expect(press('A')).toBe('amend')
    expect(press('A', { shiftKey: true })).toBe('amendNow')
  })
  it('every act has words in both languages', () => {
    for (const { act } of keyList) for (const words of Object.values(messages)) expect(words.keys[act]).toBeTruthy()
  })
})
