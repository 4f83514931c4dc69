/** The gauges, the chosen one with its neighbours above the others. */
import type { MapColours } from './mapColours.ts'
import type { Size, View } from './mapFrame.ts'
import { type Box, paintText } from './paintLabels.ts'
import { paintMark } from './paintMark.ts'
import type { Scene } from './scene.ts'

export function paintGauges(
  context: CanvasRenderingContext2D,
  scene: Scene,
  view: View,
  size: Size,
  colours: MapColours,
  taken: Box[],
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
    const width = context.measureText(name).width
    taken.push({ x: left ? x - radius - 18 - width : x + radius + 18, y: y - 9, width, height: 18 })
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
