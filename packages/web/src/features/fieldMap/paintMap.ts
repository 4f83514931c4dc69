/** One frame of the map on a canvas: base, field, lines, gauges, labels. Coordinates are CSS pixels; the caller scales. */
import type { BaseMap } from './baseMap.ts'
import type { GaugeMark } from './gaugeMark.ts'
import type { IsohyetPath } from './isohyetPaths.ts'
import type { MapColours } from './mapColours.ts'
import type { MapFrame, Size, View } from './mapFrame.ts'
import { paintMark } from './paintMark.ts'
import type { Rgb } from './palettes.ts'

export type FieldImage = { image: CanvasImageSource; x: number; y: number; width: number; height: number }
export type Scene = {
  frame: MapFrame
  base: BaseMap
  field: FieldImage | null
  isohyets: readonly IsohyetPath[]
  /** World positions x0, y0, x1, y1, … of the gauges, and their marks and colours in the same order. */
  world: Float64Array
  marks: readonly GaugeMark[]
  colours: readonly (Rgb | null)[]
  chosen: number
  hovered: number
  /** Neighbours of the chosen gauge: index and weight relative to the heaviest. */
  neighbours: readonly { at: number; weight: number }[]
  names: readonly string[]
}

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
  paintGauges(context, scene, view, size, colours)
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

type Box = { x: number; y: number; width: number; height: number }

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

function paintText(
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

function paintIsohyetLabels(
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

function paintGauges(
  context: CanvasRenderingContext2D,
  scene: Scene,
  view: View,
  size: Size,
  colours: MapColours,
): void {
  const at = (i: number) =>
    [scene.world[i * 2]! * view.scale + view.xPx, scene.world[i * 2 + 1]! * view.scale + view.yPx] as const
  const crowding =
    Math.sqrt((scene.frame.worldWidth * scene.frame.worldHeight) / Math.max(1, scene.marks.length)) * view.scale
  const radius = Math.min(7, Math.max(2.6, crowding * 0.16))
  if (scene.chosen >= 0) {
    const [cx, cy] = at(scene.chosen)
    for (const { at: i, weight } of scene.neighbours) {
      const [x, y] = at(i)
      context.beginPath()
      context.moveTo(cx, cy)
      context.lineTo(x, y)
      context.strokeStyle = colours.halo
      context.lineWidth = 2.5 + 4 * weight
      context.stroke()
      context.strokeStyle = colours.accent
      context.lineWidth = 0.8 + 3.2 * weight
      context.stroke()
    }
  }
  const paintOne = (i: number, r: number) => {
    const [x, y] = at(i)
    if (x < -20 || y < -20 || x > size.widthPx + 20 || y > size.heightPx + 20) return
    paintMark(context, scene.marks[i]!, x, y, r, scene.colours[i] ?? null, colours)
  }
  scene.marks.forEach((mark, i) => {
    if (!mark.doubtful && i !== scene.chosen) paintOne(i, radius)
  })
  scene.marks.forEach((mark, i) => {
    if (mark.doubtful && i !== scene.chosen) paintOne(i, radius + 0.8)
  })
  for (const { at: i } of scene.neighbours) paintRing(context, ...at(i), radius + 2.5, colours, 1.6)
  if (scene.hovered >= 0) paintRing(context, ...at(scene.hovered), radius + 3, colours, 2)
  if (scene.chosen >= 0) {
    paintOne(scene.chosen, radius + 1.5)
    paintChosen(context, ...at(scene.chosen), radius + 10, colours)
    context.font = '650 13px system-ui, sans-serif'
    context.textAlign = 'left'
    context.textBaseline = 'middle'
    const [x, y] = at(scene.chosen)
    const name = scene.names[scene.chosen] ?? ''
    const left = x + radius + 18 + context.measureText(name).width > size.widthPx
    context.textAlign = left ? 'right' : 'left'
    paintText(context, name, left ? x - radius - 18 : x + radius + 18, y, colours.ink, colours.halo)
  }
}

function paintRing(
  context: CanvasRenderingContext2D,
  x: number,
  y: number,
  r: number,
  colours: MapColours,
  width: number,
): void {
  context.beginPath()
  context.arc(x, y, r, 0, 2 * Math.PI)
  context.lineWidth = width + 2
  context.strokeStyle = colours.halo
  context.stroke()
  context.lineWidth = width
  context.strokeStyle = colours.accent
  context.stroke()
}

/** The chosen gauge: four bars round it, as in a sight. */
function paintChosen(context: CanvasRenderingContext2D, x: number, y: number, r: number, colours: MapColours): void {
  context.beginPath()
  for (const [dx, dy] of [
    [1, 0],
    [-1, 0],
    [0, 1],
    [0, -1],
  ] as const) {
    context.moveTo(x + dx * (r - 4), y + dy * (r - 4))
    context.lineTo(x + dx * (r + 5), y + dy * (r + 5))
  }
  context.lineWidth = 5
  context.strokeStyle = colours.halo
  context.stroke()
  context.lineWidth = 2.6
  context.strokeStyle = colours.accent
  context.stroke()
}

function paintPlaceLabels(
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
