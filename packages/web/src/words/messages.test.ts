import { describe, expect, it } from 'vitest'
import { messages } from './messages.ts'

/** Every message by its path. */
function flat(value: unknown, path = ''): [string, string][] {
  if (typeof value === 'string') return [[path, value]]
  return Object.entries(value as object).flatMap(([key, inner]) => flat(inner, `${path}.${key}`))
}
const places = (text: string) => [...text.matchAll(/\{\w+\}/g)].map(([place]) => place).sort()

describe('messages', () => {
  const english = new Map(flat(messages.en))
  const spanish = new Map(flat(messages.es))
  it('hold the same keys in both languages, none empty', () => {
    expect([...spanish.keys()].sort()).toEqual([...english.keys()].sort())
    for (const [path, text] of [...english, ...spanish]) expect(text.trim(), path).not.toBe('')
  })
  it('name the same values in both languages', () => {
    for (const [path, text] of english) expect(places(spanish.get(path)!), path).toEqual(places(text))
  })
})
