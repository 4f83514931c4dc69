/** Words on the map: levels of isohyets, towns and counties, each only where it covers no other. */
import type { MapColours } from './mapColours.ts'
import type { Size, View } from './mapFrame.ts'
import type { Scene } from './scene.ts'

export type Box = { x: number; y: number; width: number; height: number }

/** Take a place for a label unless it covers one already there. */
function takePlace(taken: Box[], box: Box): boolean {
  const overlaps = taken.some(
    (other) =>
      box.x < other.x + other.width &&
      other.x < box.x + box.width &&
      box.y < other.y + other.height &&
      other.y < box.y + box.height,
  )
  if (!overlaps) taken.push(box)
  return !overlaps
}

export function paintText(
  context: CanvasRenderingContext2D,
  text: string,
  x: number,
  y: number,
  fill: string,
  halo: string,
): void {
  context.lineWidth = 3
  context.strokeStyle = halo
  context.lineJoin = 'round'
  context.strokeText(text, x, y)
  context.fillStyle = fill
  context.fillText(text, x, y)
}

export function paintIsohyetLabels(
  context: CanvasRenderingContext2D,
  scene: Scene,
  view: View,
  colours: MapColours,
  taken: Box[],
): void {
  context.font = '600 11px system-ui, sans-serif'
  context.textAlign = 'center'
  context.textBaseline = 'middle'
  for (const { label, places } of scene.isohyets)
    for (const [worldX, worldY] of places) {
      const x = worldX * view.scale + view.xPx
      const y = worldY * view.scale + view.yPx
      const width = context.measureText(label).width + 8
      if (takePlace(taken, { x: x - width / 2 - 24, y: y - 18, width: width + 48, height: 36 }))
        paintText(context, label, x, y, colours.ink, colours.halo)
    }
}

export function paintPlaceLabels(
  context: CanvasRenderingContext2D,
  scene: Scene,
  view: View,
  size: Size,
  colours: MapColours,
  taken: Box[],
): void {
  context.textBaseline = 'middle'
  for (const label of [...scene.base.labels].sort((a, b) => a.rank - b.rank)) {
    const x = label.x * view.scale + view.xPx
    const y = label.y * view.scale + view.yPx
    if (x < 0 || y < 0 || x > size.widthPx || y > size.heightPx) continue
    const isPlace = label.kind === 'place'
    context.font = isPlace
      ? `${label.rank <= 1 ? 650 : 500} 12px system-ui, sans-serif`
      : '600 12px system-ui, sans-serif'
    context.letterSpacing = isPlace ? '0px' : '2px'
    const text = isPlace ? label.text : label.text.toUpperCase()
    const width = context.measureText(text).width
    const box = isPlace
      ? { x: x - 4, y: y - 8, width: width + 12, height: 16 }
      : { x: x - width / 2, y: y - 8, width, height: 16 }
    if (takePlace(taken, box)) {
      context.textAlign = isPlace ? 'left' : 'center'
      if (isPlace) {
        context.fillStyle = colours.town
        context.fillRect(x - 2.5, y - 2.5, 5, 5)
      }
      paintText(context, text, isPlace ? x + 7 : x, y, colours.town, colours.halo)
    }
    context.letterSpacing = '0px'
  }
}
