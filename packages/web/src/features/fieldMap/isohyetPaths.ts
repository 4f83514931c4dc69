/** Isohyets ready to draw: one path a level, and where along its longest lines the level is written. */
import type { DayField } from '@gaugewright/contract'
import { drawLine } from './drawLine.ts'
import type { MapFrame } from './mapFrame.ts'

export type IsohyetPath = {
  levelMm: number
  label: string
  path: Path2D
  isMain: boolean
  /** For each line to be labelled: places along it, the best first. */
  places: [number, number][][]
}

const shares = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.12, 0.88]

export function isohyetPaths(
  isohyets: DayField['isohyets'],
  frame: MapFrame,
  labelOf: (levelMm: number) => string,
): IsohyetPath[] {
  return isohyets.map(({ levelMm, lines }, index) => {
    const path = new Path2D()
    const projected = lines.map((line) => line.map(([lon, lat]) => frame.project(lon, lat)))
    for (const line of projected) drawLine(path, line)
    const longest = projected
      .map((line) => ({ line, length: lengthOf(line) }))
      .sort((a, b) => b.length - a.length)
      .slice(0, 2)
    const places = longest
      .filter(({ line, length }) => length > 60 || line.length <= 2)
      .map(({ line }) => shares.map((share) => line[Math.floor((line.length - 1) * share)]!))
    return { levelMm, label: labelOf(levelMm), path, isMain: index % 2 === 0, places }
  })
}

function lengthOf(line: readonly (readonly [number, number])[]): number {
  let length = 0
  for (let i = 1; i < line.length; i += 1)
    length += Math.hypot(line[i]![0] - line[i - 1]![0], line[i]![1] - line[i - 1]![1])
  return length
}
