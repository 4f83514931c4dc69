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
  for (const { label, places } of scene.isohyets) {
    const width = context.measureText(label).width + 8
    for (const line of places) {
      const free = line
        .map(([worldX, worldY]) => [worldX * view.scale + view.xPx, worldY * view.scale + view.yPx] as const)
        .find(
          ([x, y]) =>
            !touchesGauge(scene, view, x, y, width / 2) &&
            takePlace(taken, { x: x - width / 2 - 16, y: y - 14, width: width + 32, height: 28 }),
        )
      if (free) paintText(context, label, free[0], free[1], colours.ink, colours.halo)
    }
  }
}

/** Whether a label at a place would lie under the mark of a gauge. */
function touchesGauge(scene: Scene, view: View, x: number, y: number, halfWidth: number): boolean {
  for (let i = 0; i < scene.world.length; i += 2) {
    const dx = Math.abs(scene.world[i]! * view.scale + view.xPx - x)
    const dy = Math.abs(scene.world[i + 1]! * view.scale + view.yPx - y)
    if (dx < halfWidth + 8 && dy < 14) return true
  }
  return false
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
    const isLeft = isPlace && x + 9 + width > size.widthPx
    const start = isLeft ? x - 7 - width : isPlace ? x + 7 : x - width / 2
    if (takePlace(taken, { x: Math.min(start, x) - 2, y: y - 8, width: width + (isPlace ? 12 : 0), height: 16 })) {
      context.textAlign = 'left'
      if (isPlace) {
        context.fillStyle = colours.town
        context.fillRect(x - 2.5, y - 2.5, 5, 5)
      }
      paintText(context, text, start, y, colours.town, colours.halo)
    }
    context.letterSpacing = '0px'
  }
}
