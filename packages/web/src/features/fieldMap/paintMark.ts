import type { GaugeMark } from './gaugeMark.ts'
import type { MapColours } from './mapColours.ts'
import { cssOf, type Rgb } from './palettes.ts'

/** Draw one gauge at a screen position. `colour` fills discs and squares; null leaves them the colour of the land. */
export function paintMark(
  context: CanvasRenderingContext2D,
  mark: GaugeMark,
  xPx: number,
  yPx: number,
  radiusPx: number,
  colour: Rgb | null,
  colours: MapColours,
): void {
  const r = radiusPx
  context.lineWidth = 1.4
  context.strokeStyle = colours.ink
  context.fillStyle = colour ? cssOf(colour) : colours.land
  if (mark.doubtful) paintHalo(context, xPx, yPx, r, colours)
  context.strokeStyle = colours.ink
  context.lineWidth = 1.4
  context.beginPath()
  switch (mark.shape) {
    case 'disc':
    case 'ring':
    case 'ringWithDot':
      context.arc(xPx, yPx, mark.shape === 'disc' ? r : r - 0.6, 0, 2 * Math.PI)
      break
    case 'square':
      context.rect(xPx - r, yPx - r, 2 * r, 2 * r)
      break
    case 'cross':
    case 'dash':
    case 'struck':
      paintLines(context, mark.shape, xPx, yPx, r, colours)
      return
  }
  if (mark.shape !== 'disc' && mark.shape !== 'square') context.fillStyle = colours.halo
  context.fill()
  context.stroke()
  if (mark.shape === 'ringWithDot') {
    context.beginPath()
    context.arc(xPx, yPx, 1.4, 0, 2 * Math.PI)
    context.fillStyle = colours.ink
    context.fill()
  }
}

/** A doubtful reading: a broad broken ring outside the mark, told from a plain one by shape as well as colour. */
function paintHalo(context: CanvasRenderingContext2D, x: number, y: number, r: number, colours: MapColours): void {
  context.beginPath()
  context.arc(x, y, r + 4.5, 0, 2 * Math.PI)
  context.strokeStyle = colours.halo
  context.lineWidth = 5
  context.stroke()
  context.setLineDash([5, 2.6])
  context.strokeStyle = colours.doubt
  context.lineWidth = 2.6
  context.stroke()
  context.setLineDash([])
}

function paintLines(
  context: CanvasRenderingContext2D,
  shape: 'cross' | 'dash' | 'struck',
  x: number,
  y: number,
  r: number,
  colours: MapColours,
): void {
  const s = r * 0.75
  if (shape === 'dash') {
    context.moveTo(x - s, y)
    context.lineTo(x + s, y)
  } else {
    context.moveTo(x - s, y - s)
    context.lineTo(x + s, y + s)
    context.moveTo(x + s, y - s)
    context.lineTo(x - s, y + s)
  }
  if (shape === 'struck') {
    context.moveTo(x + r, y)
    context.arc(x, y, r, 0, 2 * Math.PI)
  }
  context.lineWidth = 3.6
  context.strokeStyle = colours.halo
  context.stroke()
  context.lineWidth = 1.6
  context.strokeStyle = colours.ink
  context.stroke()
}
