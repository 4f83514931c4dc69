/** One figure: a title, a legend, parts in rows, and a line that says where it comes from. */
import type { Part } from './drawing.ts'
import { ground, ink, quietInk } from './palette.ts'

export interface FigureAsk {
  title: string
  /** For those who cannot see it: what the figure shows, in a sentence. */
  description: string
  /** Under the title, broken into lines as wide as the figure. */
  note: string
  legend: Part | null
  rows: Part[][]
  /** At the foot, each from a new line. */
  source: string[]
}

const edge = 16
const gap = 8
const lineHeight = 16
const leastWidth = 640
/** Widest of the usual fonts, at 12 pixels; words are broken before they could leave the figure. */
const letterWidth = 6.5

/** @returns the text of an SVG file with a ground of its own */
export function composeFigure({ title, description, note, legend, rows, source }: FigureAsk): string {
  const rowWidth = (row: Part[]): number => row.reduce((sum, part) => sum + part.width, 0)
  const width = Math.max(leastWidth, ...rows.map(rowWidth), legend?.width ?? 0) + 2 * edge
  const body: string[] = []
  const place = (part: Part, x: number, y: number) => {
    body.push(`<g transform="translate(${x},${y})">${part.markup}</g>`)
  }
  let y = 28
  body.push(words(edge, y, title, 'font-size="16" font-weight="600"'))
  y += 4
  for (const line of breakWords(note, width - 2 * edge)) {
    y += lineHeight
    body.push(words(edge, y, line, `fill="${quietInk}"`))
  }
  y += 12
  if (legend !== null) {
    place(legend, edge, y)
    y += legend.height + gap
  }
  for (const row of rows) {
    let x = edge
    for (const part of row) {
      place(part, x, y)
      x += part.width
    }
    y += Math.max(...row.map((part) => part.height)) + gap
  }
  for (const line of source.flatMap((words) => breakWords(words, width - 2 * edge))) {
    y += lineHeight
    body.push(words(edge, y, line, `font-size="11" fill="${quietInk}"`))
  }
  const height = y + edge
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" role="img" aria-labelledby="title about" font-family="system-ui, sans-serif" font-size="12" fill="${ink}" color="${ink}">`,
    `<title id="title">${escapeXml(title)}</title>`,
    `<desc id="about">${escapeXml(description)}</desc>`,
    `<rect width="${width}" height="${height}" rx="6" fill="${ground}" stroke="none"/>`,
    // Plot centres its words by an attribute of the drawing that it makes.
    `<g text-anchor="middle">${body.join('\n')}</g>`,
    '</svg>\n',
  ].join('\n')
}

function words(x: number, y: number, text: string, look: string): string {
  return `<text x="${x}" y="${y}" text-anchor="start" ${look}>${escapeXml(text)}</text>`
}

function breakWords(text: string, width: number): string[] {
  const lines: string[] = []
  let line = ''
  for (const word of text.split(' ')) {
    if (line !== '' && (line.length + 1 + word.length) * letterWidth > width) {
      lines.push(line)
      line = word
    } else line = line === '' ? word : `${line} ${word}`
  }
  return [...lines, line]
}

function escapeXml(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;')
}
