/** Where plots are drawn without a browser, and how a plot becomes a part of a figure. */
import * as Plot from '@observablehq/plot'
import { parseHTML } from 'linkedom'
import { ink } from './palette.ts'

const { document } = parseHTML('<html><body></body></html>')

export interface Part {
  width: number
  height: number
  /** Elements of SVG, drawn from the part's own upper left corner. */
  markup: string
}

/** Draws with Observable Plot. @returns what stands inside the drawing, without the rules of style that are for web pages */
export function drawPart(options: Plot.PlotOptions & { width: number; height: number }): Part {
  const svg = Plot.plot({ document, className: 'plot', style: { fontSize: '11px', color: ink }, ...options })
  for (const style of svg.querySelectorAll('style')) style.remove()
  return { width: options.width, height: options.height, markup: shortNumbers(svg.innerHTML) }
}

/** A tenth of a pixel is enough: keeps files small. Only in attributes, so that words keep their digits. */
function shortNumbers(markup: string): string {
  return markup.replace(/="[^"]*"/g, (attribute) =>
    attribute.replace(/-?\d+\.\d{2,}/g, (number) => String(Math.round(Number(number) * 10) / 10)),
  )
}
