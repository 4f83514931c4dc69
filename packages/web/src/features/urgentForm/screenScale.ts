/**
 * The true scale of a screen, from a bank card held against it. A browser does not know how large its pixels are; a card
 * of format ID-1 is 85.60 × 53.98 mm everywhere. Source: [ISO7810]. Kept per device pixel, so that the scale holds when
 * the page is zoomed.
 */
export const cardMm = { long: 85.6, short: 53.98 } as const
export type CardEdge = keyof typeof cardMm

/** How the page is shown: pixels of the screen in one of the page, and how far it is pinched open. */
export interface PageView {
  devicePixelRatio: number
  pinchScale: number
}

/** Pixels of the screen in a millimetre. From old large monitors to the densest phones. */
export const plausibleDevicePxPerMm = { least: 2.5, most: 40 } as const

/** @param edgePx  length of the drawn edge, CSS pixels, when it is as long as the card's */
export function scaleFromCard(edgePx: number, edge: CardEdge, view: PageView): number {
  return (edgePx * devicePxPerCssPx(view)) / cardMm[edge]
}

/** Millimetres on the glass of a length drawn on the page, CSS pixels. */
export function mmFromPagePx(lengthPx: number, devicePxPerMm: number, view: PageView): number {
  return (lengthPx * devicePxPerCssPx(view)) / devicePxPerMm
}

/** CSS pixels that a length must be drawn with to be true on the glass. */
export function pagePxFromMm(lengthMm: number, devicePxPerMm: number, view: PageView): number {
  return (lengthMm * devicePxPerMm) / devicePxPerCssPx(view)
}

/** A scale that was kept; null where it is none or cannot be true. */
export function readScale(text: string): number | null {
  const scale = Number(text)
  const isPlausible = scale >= plausibleDevicePxPerMm.least && scale <= plausibleDevicePxPerMm.most
  return text !== '' && isPlausible ? scale : null
}

function devicePxPerCssPx({ devicePixelRatio, pinchScale }: PageView): number {
  return devicePixelRatio * pinchScale
}
