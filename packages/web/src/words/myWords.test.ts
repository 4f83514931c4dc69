import { expect, it } from 'vitest'
import { myWordsEn, myWordsEs } from './myWords.ts'

function flat(value: unknown, path = ''): [string, string][] {
  if (typeof value === 'string') return [[path, value]]
  return Object.entries(value as object).flatMap(([key, inner]) => flat(inner, `${path}.${key}`))
}
const places = (text: string) => [...text.matchAll(/\{\w+\}/g)].map(([place]) => place).sort()

it('the observer’s page has every message in both languages, none empty, with the same values named', () => {
  const spanish = new Map(flat(myWordsEs))
  const english = flat(myWordsEn)
  expect([...spanish.keys()].sort()).toEqual(english.map(([path]) => path).sort())
  for (const [path, text] of english) {
    expect(text.trim(), path).not.toBe('')
    expect(spanish.get(path)?.trim(), path).not.toBe('')
    expect(places(spanish.get(path) ?? ''), path).toEqual(places(text))
  }
})
