import { describe, expect, it } from 'vitest'
import { amountScale, changeScale, classIn, edgesUpTo, edgeText } from './classScale.ts'
import { bilbao, navia, type Rgb, rgbOf } from './palettes.ts'

/** CIE lightness L*, for telling that steps of a table look even. Source: CIE 15 by way of sRGB [IEC61966]. */
function lightness([r, g, b]: Rgb): number {
  const [x, y, z] = [r, g, b].map((c) => (c / 255 <= 0.04045 ? c / 255 / 12.92 : ((c / 255 + 0.055) / 1.055) ** 2.4))
  const luminance = 0.2126 * x! + 0.7152 * y! + 0.0722 * z!
  return luminance > 0.008856 ? 116 * Math.cbrt(luminance) - 16 : 903.3 * luminance
}

describe('palettes', () => {
  it('navia and bilbao rise in lightness from end to end without a step back', () => {
    for (const table of [navia, bilbao]) {
      const steps = table.map((hex) => lightness(rgbOf(hex)))
      expect(steps.every((l, i) => i === 0 || l > steps[i - 1]!)).toBe(true)
      expect(steps.at(-1)! - steps[0]!).toBeGreaterThan(75)
    }
  })
})

describe('amountScale', () => {
  it('takes the isohyets as edges, so that a line of the map is an edge of colour', () => {
    const scale = amountScale(60, [10, 20, 30, 40], 'mm', false)
    expect(scale.edgesMm).toEqual([0.1, 10, 20, 30, 40])
    expect([0, 0.05, 0.1, 12, 40, 99].map(scale.classOf)).toEqual([-1, -1, 0, 1, 4, 4])
  })
  it('parts light amounts further, and spends no colour on the core of one storm', () => {
    const inches = [0.05, 0.5, 1, 1.5, 2, 2.5, 3].map((level) => level * 25.4)
    const edges = amountScale(40, inches, 'in', false).edgesMm.map((mm) => mm / 25.4)
    expect(edges.map((edge) => Number(edge.toFixed(6)))).toEqual([0.01, 0.05, 0.1, 0.25, 0.5, 1, 1.5])
  })
  it('more rain is darker on a light page and lighter on a dark one', () => {
    const light = amountScale(60, [], 'mm', false).colours.map(lightness)
    const dark = amountScale(60, [], 'mm', true).colours.map(lightness)
    expect(light.every((l, i) => i === 0 || l < light[i - 1]!)).toBe(true)
    expect(dark.every((l, i) => i === 0 || l > dark[i - 1]!)).toBe(true)
  })
})

it('edgesUpTo keeps the dry edge and the largest, and at most ten', () => {
  const edges = edgesUpTo(250, 'mm')
  expect(edges[0]).toBe(0.1)
  expect(edges.at(-1)).toBe(200)
  expect(edges.length).toBeLessThanOrEqual(10)
  expect(edgesUpTo(0, 'mm')).toEqual([0.1])
})

it('classIn counts an amount on an edge to the class above it', () => {
  expect([0.9, 1, 4.9, 5].map((mm) => classIn([1, 5], mm))).toEqual([-1, 0, 0, 1])
})

describe('changeScale', () => {
  const scale = changeScale('mm', false)
  it('leaves a small change either way without colour and keeps the signs apart', () => {
    expect([0, 0.1, -0.1].map(scale.classOf)).toEqual([-1, -1, -1])
    expect([-30, -2, -0.3, 0.3, 2, 30].map(scale.classOf)).toEqual([0, 2, 3, 4, 5, 7])
  })
  it('says each class from near to far, open outside', () => {
    const bare = (mm: number) => mm.toFixed(1)
    expect([0, 3, 4, 7].map((i) => edgeText(scale, i, true, bare))).toEqual([
      '− ≥ 25.0',
      '− 0.2–1.0',
      '+ 0.2–1.0',
      '+ ≥ 25.0',
    ])
  })
})
