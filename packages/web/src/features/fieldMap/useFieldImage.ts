import type { DayField, WhatIf } from '@gaugewright/contract'
import { useMemo } from 'react'
import { amountScale, type ClassScale, changeScale, widthScale } from './classScale.ts'
import { classedPixels } from './fieldRaster.ts'
import type { MapFrame } from './mapFrame.ts'
import type { FieldImage } from './scene.ts'

export const measures = ['amount', 'uncertainty', 'change', 'gauges'] as const
export type Measure = (typeof measures)[number]

/** The values of a measure on the grid of a field, mm; null where there is no field. */
export function valuesOf(measure: Measure, field: DayField | null, change: WhatIf | null): (number | null)[] | null {
  if (measure === 'gauges') return null
  if (measure === 'change')
    return change
      ? change.after.meanMm.map((mm, i) => (mm === null ? null : mm - (change.before.meanMm[i] ?? mm)))
      : null
  if (!field) return null
  if (measure === 'uncertainty')
    return field.p90Mm.map((high, i) => (high === null ? null : high - (field.p10Mm[i] ?? high)))
  return field.meanMm
}

/** The scale of a measure: amounts follow the day's largest amount and its isohyets. */
export function scaleOf(
  measure: Measure,
  field: DayField | null,
  largestMm: number,
  unit: 'in' | 'mm',
  isDark: boolean,
): ClassScale {
  if (measure === 'change') return changeScale(unit, isDark)
  if (measure === 'uncertainty') {
    const widths = valuesOf('uncertainty', field, null) ?? []
    return widthScale(
      widths.reduce<number>((most, mm) => Math.max(most, mm ?? 0), 0),
      unit,
      isDark,
    )
  }
  const sorted = Float64Array.from((field?.meanMm ?? []).filter((mm) => mm !== null)).sort()
  const bulkMm = sorted[Math.floor(sorted.length * 0.995)] ?? largestMm
  const isohyets = field?.isohyets.map(({ levelMm }) => levelMm) ?? []
  return amountScale(bulkMm, isohyets, unit, isDark)
}

/** The field drawn once into an image that panning and zooming only move; null when there is nothing to draw. */
export function useFieldImage(
  grid: DayField | null,
  values: (number | null)[] | null,
  scale: ClassScale,
  frame: MapFrame,
): FieldImage | null {
  return useMemo(() => {
    if (!grid || !values) return null
    const [left, top] = frame.project(grid.west, grid.north)
    const [right, bottom] = frame.project(grid.east, grid.south)
    const widthPx = Math.min(900, Math.max(300, grid.columns * 8))
    const heightPx = Math.max(1, Math.round((widthPx * (bottom - top)) / (right - left)))
    const rowOfPixel = Float64Array.from({ length: heightPx }, (_, y) => {
      const lat = frame.latOfWorldY(top + ((y + 0.5) / heightPx) * (bottom - top))
      return ((grid.north - lat) / (grid.north - grid.south)) * grid.rows
    })
    const canvas = document.createElement('canvas')
    canvas.width = widthPx
    canvas.height = heightPx
    const pixels = classedPixels({ columns: grid.columns, rows: grid.rows, values }, scale, widthPx, rowOfPixel, 225)
    canvas.getContext('2d')?.putImageData(new ImageData(pixels, widthPx, heightPx), 0, 0)
    return { image: canvas, x: left, y: top, width: right - left, height: bottom - top }
  }, [grid, values, scale, frame])
}
