import { parseHTML } from 'linkedom'
import { describe, expect, it } from 'vitest'
import { drawFigures } from '../src/plots/drawFigures.ts'
import { inventedResult } from './support/inventedResult.ts'

describe('drawFigures', () => {
  const results = [inventedResult('trentino', 40, 90), inventedResult('parana', 620, 40)]
  const files = drawFigures(results)
  const rootOf = (svg: string) => parseHTML(svg).document.querySelector('svg')!
  const drawn = (name: string) => rootOf(files.find((file) => file.name === name)!.svg)

  it('draws six kinds of figures, the map once for each network', () => {
    expect(files.map((file) => file.name)).toEqual([
      'reliability.svg',
      'recall-by-mistake.svg',
      'precision-recall.svg',
      'pit.svg',
      'reliability-dry.svg',
      'residuals-trentino.svg',
      'residuals-parana.svg',
    ])
  })

  it.each(files.map((file) => [file.name, file.svg]))(
    '%s is smaller than 60 kB, of a network of 620 gauges too',
    (_, svg) => {
      expect(Buffer.byteLength(svg)).toBeLessThan(60_000)
    },
  )

  it.each(files.map((file) => [file.name, file.svg]))(
    '%s has a ground of its own over all of it, a title, and words for those who cannot see it',
    (_, svg) => {
      const root = rootOf(svg)
      const ground = root.querySelector('rect')!
      expect(ground.getAttribute('width')).toBe(root.getAttribute('width'))
      expect(ground.getAttribute('height')).toBe(root.getAttribute('height'))
      expect(ground.getAttribute('fill')).toBe('#ffffff')
      expect(root.querySelector('title')!.textContent).not.toBe('')
      expect(root.querySelector('desc')!.textContent!.length).toBeGreaterThan(40)
    },
  )

  it.each(files.map((file) => [file.name, file.svg]))(
    '%s says where it comes from, and holds no number that is not one',
    (_, svg) => {
      expect(svg).toContain('npm run bench:plots')
      expect(svg).not.toMatch(/NaN|undefined|Infinity/)
    },
  )

  it('draws every gauge of a map once, with a sign wherever its colour says more or less', () => {
    const map = drawn('residuals-parana.svg')
    const legend = 7
    const tooFew = map.querySelectorAll('[aria-label="dot"] path').length
    expect(map.querySelectorAll('circle').length + tooFew).toBe(620 + legend)
    const signs = [...map.querySelectorAll('path')].filter((path) => path.getAttribute('stroke-width') === '1.4')
    const signed = signs.reduce((sum, path) => sum + (path.getAttribute('d')!.match(/M[^M]*h/g)?.length ?? 0), 0)
    const pale = [...map.querySelectorAll('g[fill="#f7f7f7"] circle, circle[fill="#f7f7f7"]')].length
    expect(signed).toBe(620 + legend - tooFew - pale)
  })

  it('names the axes', () => {
    const words = (name: string) => drawn(name).textContent!
    expect(words('reliability.svg')).toContain('p_stands said')
    expect(words('reliability.svg')).toContain('share that stand')
    expect(words('residuals-parana.svg')).toContain('longitude (°)')
    expect(words('pit.svg')).toContain('share of the expectation below the reading')
    expect(words('recall-by-mistake.svg')).toContain('recall at 1 % false alarms')
  })

  it('takes the published check with the larger area, and writes its name as it is', () => {
    expect(files[1]!.svg).toContain('neighbour &amp; ratio')
    expect(files[1]!.svg).not.toContain('a worse one')
  })

  it('leaves out figures of runs that were not made', () => {
    const judgedOnly = results.map((result) => ({ ...result, ours: { ...result.ours, expectation: null } }))
    expect(drawFigures(judgedOnly).map((file) => file.name)).toEqual([
      'reliability.svg',
      'recall-by-mistake.svg',
      'precision-recall.svg',
    ])
  })
})
