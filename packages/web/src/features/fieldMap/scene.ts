/** All that one frame of the map shows. */
import type { BaseMap } from './baseMap.ts'
import type { GaugeMark } from './gaugeMark.ts'
import type { IsohyetPath } from './isohyetPaths.ts'
import type { MapFrame } from './mapFrame.ts'
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
