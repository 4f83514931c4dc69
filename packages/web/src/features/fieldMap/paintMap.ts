/** One frame of the map on a canvas: base, field, lines, gauges, labels. Coordinates are CSS pixels; the caller scales. */
import type { MapColours } from './mapColours.ts'
import type { Size, View } from './mapFrame.ts'
import { paintGauges } from './paintGauges.ts'
import { type Box, paintIsohyetLabels, paintPlaceLabels } from './paintLabels.ts'
import type { Scene } from './scene.ts'

export function paintMap(
  context: CanvasRenderingContext2D,
  scene: Scene,
  view: View,
  size: Size,
  pixelRatio: number,
  colours: MapColours,
): void {
  const onWorld = () =>
    context.setTransform(
      view.scale * pixelRatio,
      0,
      0,
      view.scale * pixelRatio,
      view.xPx * pixelRatio,
      view.yPx * pixelRatio,
    )
  const onScreen = () => context.setTransform(pixelRatio, 0, 0, pixelRatio, 0, 0)
  onScreen()
  context.fillStyle = colours.paper
  context.fillRect(0, 0, size.widthPx, size.heightPx)
  onWorld()
  paintLand(context, scene, view, colours)
  paintLines(context, scene, view, colours)
  onScreen()
  const taken: Box[] = []
  paintIsohyetLabels(context, scene, view, colours, taken)
  paintGauges(context, scene, view, size, colours, taken)
  paintPlaceLabels(context, scene, view, size, colours, taken)
}

function paintLand(context: CanvasRenderingContext2D, scene: Scene, view: View, colours: MapColours): void {
  const { base, field } = scene
  context.fillStyle = colours.land
  if (base.outline) context.fill(base.outline)
  else context.fillRect(0, 0, scene.frame.worldWidth, scene.frame.worldHeight)
  context.save()
  if (base.outline) context.clip(base.outline)
  if (field) {
    context.imageSmoothingEnabled = true
    context.drawImage(field.image, field.x, field.y, field.width, field.height)
  }
  const bands = base.paths.filter(({ kind }) => kind === 'relief').length
  // All bands together darken the highest ground by a tenth under a field, so that its colours stay those of the legend.
  context.globalAlpha = (field ? 0.1 : 0.3) / Math.max(1, bands)
  context.fillStyle = colours.relief
  context.strokeStyle = colours.relief
  context.lineWidth = 1 / view.scale
  for (const { kind, path, isLine } of base.paths) {
    if (kind !== 'relief') continue
    if (isLine) context.stroke(path)
    else context.fill(path, 'evenodd')
  }
  context.restore()
}

function paintLines(context: CanvasRenderingContext2D, scene: Scene, view: View, colours: MapColours): void {
  const px = 1 / view.scale
  context.lineJoin = 'round'
  context.lineCap = 'round'
  for (const { kind, path, rank } of scene.base.paths) {
    if (kind === 'relief') continue
    if (kind === 'area') context.setLineDash([4 * px, 3 * px])
    context.strokeStyle = kind === 'outline' ? colours.boundary : kind === 'area' ? colours.county : colours.river
    context.lineWidth = (kind === 'outline' ? 1.6 : kind === 'area' ? 1.1 : 0.35 + 0.4 * Math.min(4, rank)) * px
    context.stroke(path)
    context.setLineDash([])
  }
  context.strokeStyle = colours.isohyet
  for (const { path, isMain } of scene.isohyets) {
    context.lineWidth = (isMain ? 1.5 : 0.8) * px
    context.stroke(path)
  }
}
