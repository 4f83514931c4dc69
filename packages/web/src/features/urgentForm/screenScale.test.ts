import { describe, expect, it } from 'vitest'
import { cardMm, mmFromPagePx, pagePxFromMm, readScale, scaleFromCard } from './screenScale.ts'

describe('the scale of a screen', () => {
  it('is that of the maker: 458 pixels to the inch at ratio 3, a card edge drawn with 324.45 CSS pixels', () => {
    // 53.98 mm × 458 px/in ÷ 25.4 mm/in ÷ 3 = 324.45.
    const scale = scaleFromCard(324.45, 'short', { devicePixelRatio: 3, pinchScale: 1 })
    expect(scale * 25.4).toBeCloseTo(458, 1)
    // An inch on that glass is 152.67 CSS pixels.
    expect(pagePxFromMm(25.4, scale, { devicePixelRatio: 3, pinchScale: 1 })).toBeCloseTo(152.67, 2)
    expect(mmFromPagePx(152.67, scale, { devicePixelRatio: 3, pinchScale: 1 })).toBeCloseTo(25.4, 2)
  })

  it('holds when the page is zoomed or pinched open afterwards', () => {
    const scale = scaleFromCard(330, 'short', { devicePixelRatio: 2.625, pinchScale: 1 })
    const plain = mmFromPagePx(100, scale, { devicePixelRatio: 2.625, pinchScale: 1 })
    expect(mmFromPagePx(50, scale, { devicePixelRatio: 2.625, pinchScale: 2 })).toBeCloseTo(plain, 9)
    expect(mmFromPagePx(80, scale, { devicePixelRatio: 2.625 * 1.25, pinchScale: 1 })).toBeCloseTo(plain, 9)
  })

  it('comes out the same from either edge of the card (ISO/IEC 7810 ID-1: 85.60 × 53.98 mm)', () => {
    const view = { devicePixelRatio: 1, pinchScale: 1 }
    const perMm = 96 / 25.4
    expect(scaleFromCard(85.6 * perMm, 'long', view)).toBeCloseTo(scaleFromCard(53.98 * perMm, 'short', view), 9)
    expect([cardMm.long, cardMm.short]).toEqual([85.6, 53.98])
  })

  it('that was kept is read back only where it can be true', () => {
    expect(readScale('18.03')).toBe(18.03)
    for (const text of ['', 'NaN', '0', '1.2', '400', 'x']) expect(readScale(text)).toBeNull()
  })
})
