import { damages, floodedThings, groundCovers, stoneShapes, urgentKinds, waterDepths } from '@gaugewright/contract'
import { hailObjectNames } from '@gaugewright/science'
import { describe, expect, it } from 'vitest'
import { urgentFormWordsEn, urgentFormWordsEs } from './urgentFormWords.ts'

function flat(value: unknown, path = ''): [string, string][] {
  if (typeof value === 'string') return [[path, value]]
  return Object.entries(value as object).flatMap(([key, inner]) => flat(inner, `${path}.${key}`))
}
const places = (text: string) => [...text.matchAll(/\{\w+\}/g)].map(([place]) => place).sort()

describe('words of the form for urgent reports', () => {
  const english = new Map(flat(urgentFormWordsEn))
  const spanish = new Map(flat(urgentFormWordsEs))
  it('hold the same keys and name the same values in both languages, none empty', () => {
    expect([...spanish.keys()].sort()).toEqual([...english.keys()].sort())
    for (const [path, text] of english) expect(places(spanish.get(path)!), path).toEqual(places(text))
    for (const [path, text] of [...english, ...spanish]) expect(text.trim(), path).not.toBe('')
  })
  it('have one for each thing that can be told', () => {
    const w = urgentFormWordsEn
    expect(Object.keys(w.kinds)).toEqual([...urgentKinds])
    expect(Object.keys(w.objects)).toEqual([...hailObjectNames])
    expect(Object.keys(w.shapes)).toEqual([...stoneShapes])
    expect(Object.keys(w.covers)).toEqual([...groundCovers])
    expect(Object.keys(w.damages)).toEqual([...damages])
    expect(Object.keys(w.things)).toEqual([...floodedThings])
    expect(Object.keys(w.depths)).toEqual([...waterDepths])
  })
})
