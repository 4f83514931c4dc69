/**
 * Drawn gauges are to scale: a browser draws them, and the reading is taken from the picture's pixels alone: where the dark
 * marks of the scale lie, and where water begins in the middle of the tube.
 */
import { GaugeTube, heightMm } from '@gaugewright/drawings'
import { apparentUm, type GaugeDrill, makeDrill, seededRandom, TUBE_INNER_MM } from '@gaugewright/science'
import type { Browser, Page } from 'playwright-core'
import { createElement } from 'react'
import { renderToStaticMarkup } from 'react-dom/server'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { openBrowser } from './openBrowser.ts'

let browser: Browser
let page: Page
beforeAll(async () => {
  browser = await openBrowser()
  page = await browser.newPage({ viewport: { width: 900, height: 2600 }, deviceScaleFactor: 2 })
})
afterAll(() => browser?.close())

const WIDTH_PX = 400

/** Rows of the picture, from the top: where the scale's marks and the water's surface are, in pixels. */
async function look(drill: GaugeDrill): Promise<{ marks: number[]; surface: number | null; pxPerMm: number }> {
  const svg = renderToStaticMarkup(createElement(GaugeTube, { drill, fill: 0, label: 'gauge', widthPx: WIDTH_PX }))
  await page.setContent(
    `<body style="margin:0;background:#fff;--tube-air:#fff;--tube-water:#9cc8e4;--tube-line:#0b4f68;--ink:#000">${svg}</body>`,
  )
  const png = (await page.locator('svg').screenshot()).toString('base64')
  const viewBox = (await page.locator('svg').getAttribute('viewBox'))!.split(' ').map(Number)
  const widthMm = viewBox[2]!
  // Every mark, short ones too, crosses 4 mm to the right of the inner wall; in the middle of the tube there is none.
  const shares = [-TUBE_INNER_MM / 2 + 4, 2].map((xMm) => (xMm - viewBox[0]!) / widthMm)
  const picture = await page.evaluate(
    async ({ base64, shares: columns }) => {
      const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0))
      const image = await createImageBitmap(new Blob([bytes], { type: 'image/png' }))
      const canvas = new OffscreenCanvas(image.width, image.height)
      const context = canvas.getContext('2d')!
      context.drawImage(image, 0, 0)
      const column = (share: number) => [
        ...context.getImageData(Math.round(share * image.width), 0, 1, image.height).data,
      ]
      return { width: image.width, height: image.height, scale: column(columns[0]!), middle: column(columns[1]!) }
    },
    { base64: png, shares },
  )
  const pxPerMm = picture.width / widthMm
  const at = (column: number[], y: number) => column.slice(y * 4, y * 4 + 3) as [number, number, number]
  const isDark = ([r, g, b]: [number, number, number]) => r + g + b < 300
  const marks: number[] = []
  let run: number[] = []
  for (let y = 0; y < picture.height; y++) {
    if (isDark(at(picture.scale, y))) run.push(y)
    else if (run.length > 0) {
      marks.push((run[0]! + run.at(-1)!) / 2)
      run = []
    }
  }
  // The first pixel of the middle that is not white is the surface.
  let surface: number | null = null
  for (let y = 0; y < picture.height && surface === null; y++) {
    const [r, , b] = at(picture.middle, y)
    if (r < 200 && b > 60) surface = y
  }
  return { marks, surface, pxPerMm }
}

const drills = (['in', 'mm'] as const).flatMap((unit) =>
  (['meniscus', 'hundredths'] as const).flatMap((skill) =>
    [3, 14, 15, 92].map(
      (seed) => [`${unit}, ${skill}, seed ${seed}`, makeDrill(skill, unit, seededRandom(seed)) as GaugeDrill] as const,
    ),
  ),
)

describe('a drawn gauge, read from its pixels', () => {
  it.each(drills)('%s: the bottom of the curve stands at the amount that is right to type', async (_, drill) => {
    const { marks, surface, pxPerMm } = await look(drill)
    expect(surface).not.toBeNull()
    // The zero mark lies lowest of the evenly spaced ones; the rounded bottom is below it.
    const stepPx = heightMm(drill.stepUm) * pxPerMm
    const scale = marks.filter(
      (y, k) =>
        k === 0 ||
        Math.abs(marks[k]! - marks[k - 1]! - stepPx) < stepPx * 0.3 ||
        Math.abs((marks[k + 1] ?? 0) - y - stepPx) < stepPx * 0.3,
    )
    const steps = Math.round(drill.tubeUm / drill.stepUm)
    const top = scale[0]!
    const readSteps = steps - (surface! - top) / stepPx
    // Within a quarter of a step: half a line's breadth of the surface, and the pixel itself.
    expect(Math.abs(readSteps - drill.trueUm / drill.stepUm)).toBeLessThan(0.25)
  })

  it('marks are as far apart as the scale says, from the first to the last', async () => {
    for (const unit of ['in', 'mm'] as const) {
      const drill = { ...(makeDrill('meniscus', unit, seededRandom(5)) as GaugeDrill), fillsUm: [0], trueUm: 0 }
      const { marks, pxPerMm } = await look(drill)
      const steps = Math.round(drill.tubeUm / drill.stepUm)
      const whole = marks[steps]! - marks[0]!
      // An inch of rain stands ten inches high, 25 mm of it 250 mm.
      expect(whole / pxPerMm).toBeCloseTo(unit === 'in' ? 254 : 250, 0)
    }
  })

  it('from above the surface seems higher by the tube’s radius times the tangent of the angle', async () => {
    const level = { ...(makeDrill('eye level', 'in', seededRandom(7)) as GaugeDrill), eyeDeg: 0 }
    const tilted = { ...level, eyeDeg: 18 }
    const [straight, seen] = [await look(level), await look(tilted)]
    const shiftMm = (straight.surface! - seen.surface!) / straight.pxPerMm
    expect(shiftMm).toBeCloseTo((TUBE_INNER_MM / 2) * Math.tan((18 * Math.PI) / 180), 0)
    expect(apparentUm(tilted, tilted.trueUm)).toBeGreaterThan(tilted.trueUm)
  })
})
