/** A legend in one line: mark, line and words. */
import * as Plot from '@observablehq/plot'
import { drawPart, type Part } from './drawing.ts'
import { ground } from './palette.ts'

export interface LegendItem {
  label: string
  colour: string
  symbol?: 'circle' | 'square' | 'times' | undefined
  /** Shown with a piece of line; left out for a whole line. */
  dash?: string | undefined
  hasLine?: boolean
  /** A broad pale piece of line, for a band. */
  isBand?: boolean
}

export const bandOpacity = 0.22

/** Mean width of a letter at 12 pixels. */
const letterWidth = 6.3

export function drawLegend(items: readonly LegendItem[]): Part {
  let x = 0
  const placed = items.map((item) => {
    const at = { ...item, x }
    x += 30 + item.label.length * letterWidth + 22
    return at
  })
  const width = Math.ceil(x)
  const height = 20
  return drawPart({
    width,
    height,
    margin: 0,
    axis: null,
    x: { domain: [0, width], range: [0, width] },
    y: { domain: [0, 1] },
    marks: [
      ...placed
        .filter((item) => item.hasLine)
        .map((item) =>
          Plot.link([item], {
            x1: item.x,
            x2: item.x + 24,
            y1: 0.5,
            y2: 0.5,
            stroke: item.colour,
            strokeWidth: item.isBand ? 12 : 2,
            strokeOpacity: item.isBand ? bandOpacity : 1,
            strokeDasharray: item.dash,
          }),
        ),
      ...placed.filter((item) => item.symbol !== undefined).map((item) => marker([{ x: item.x + 12, y: 0.5 }], item)),
      Plot.text(placed, { x: (item) => item.x + 30, y: 0.5, text: 'label', textAnchor: 'start', fontSize: 12 }),
    ],
  })
}

/** A series' own mark: filled circles, hollow squares, crosses. */
export function marker(
  points: readonly { x: number | string; y: number | string }[],
  look: { colour: string; symbol?: 'circle' | 'square' | 'times' | undefined },
): Plot.Markish {
  return Plot.dot(points, {
    x: 'x',
    y: 'y',
    symbol: look.symbol ?? 'circle',
    r: 4,
    fill: look.symbol === 'circle' ? look.colour : look.symbol === 'square' ? ground : 'none',
    stroke: look.colour,
    strokeWidth: look.symbol === 'circle' ? 0 : 2,
  })
}
