import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { accuracyParts } from '../src/document/accuracyDocument.ts'
import { fillMarkers } from '../src/document/fillMarkers.ts'
import { inventedResult } from './support/inventedResult.ts'

const page = readFileSync(fileURLToPath(new URL('../../../docs/accuracy.md', import.meta.url)), 'utf8')

describe('accuracyParts', () => {
  const parts = accuracyParts([inventedResult('trentino', 40, 90), inventedResult('parana', 60, 40)])

  it('fill every marker of docs/accuracy.md, and leave its own words', () => {
    const filled = fillMarkers(page, parts)
    expect([...page.matchAll(/<!-- bench:(\w+) -->/g)].map((match) => match[1]).sort()).toEqual(
      Object.keys(parts).sort(),
    )
    for (const heading of page.matchAll(/^## .*$/gm)) expect(filled).toContain(heading[0])
  })

  it('have as many cells in every row of a table as in its headings, and no number that is not one', () => {
    for (const part of Object.values(parts)) {
      expect(part).not.toMatch(/NaN|undefined|null/)
      for (const block of part.split('\n\n').filter((text) => text.startsWith('|'))) {
        const widths = new Set(
          block
            .trim()
            .split('\n')
            .map((row) => row.split('|').length),
        )
        expect(widths.size).toBe(1)
      }
    }
  })

  it('list twenty doubts for each network and count each of them under one category', () => {
    const rows = parts.doubts!.split('\n').filter((row) => /^\| G\d/.test(row))
    expect(rows).toHaveLength(40)
    const counts = parts
      .reasons!.split('\n')
      .slice(2)
      .map((row) => row.split('|').slice(2, 4).map(Number))
    expect(counts.reduce((sum, [a, b]) => [sum[0]! + a!, sum[1]! + b!], [0, 0])).toEqual([20, 20])
  })
})

describe('looksOfGood', () => {
  it('counts each finding of the days once, as good or as wrong, and looks at no more than the good ones', () => {
    const { looks, halves } = inventedResult('trentino', 40, 90).ours.dayAfter!
    const sum = (of: 'good' | 'wrong') => looks.first!.reduce((total, bin) => total + bin[of], 0)
    expect(sum('good')).toBe(halves.first!.goodCount)
    expect(sum('wrong')).toBe(halves.first!.wrongCount)
    for (const bin of looks.first!) {
      expect(bin.lookedAt).toBeLessThanOrEqual(bin.good)
      expect(bin.looksWrong + bin.looksRight).toBeLessThanOrEqual(bin.lookedAt)
    }
  })
})
