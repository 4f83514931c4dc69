/** How steep the steepest obstacle is at every place: a picture of cells, light where the sky is open. */
import type { SpotGrid } from '@gaugewright/science'
import { useEffect, useState } from 'react'
import { heatColour } from './heatColour.ts'

export function HeatCells({ grid }: { grid: SpotGrid }) {
  const [url, setUrl] = useState<string | null>(null)
  useEffect(() => {
    const canvas = document.createElement('canvas')
    canvas.width = grid.columns
    canvas.height = grid.rows
    const context = canvas.getContext('2d')
    if (context === null) return
    const image = context.createImageData(grid.columns, grid.rows)
    for (let row = 0; row < grid.rows; row++) {
      for (let column = 0; column < grid.columns; column++) {
        const angle = grid.worstDeg[row * grid.columns + column]!
        const at = ((grid.rows - 1 - row) * grid.columns + column) * 4
        if (Number.isNaN(angle)) continue
        const [r, g, b] = heatColour(angle)
        image.data.set([r, g, b, 255], at)
      }
    }
    context.putImageData(image, 0, 0)
    setUrl(canvas.toDataURL())
  }, [grid])
  const { westM, southM, cellM, columns, rows } = grid
  if (url === null) return null
  return (
    <image
      href={url}
      x={westM}
      y={-(southM + rows * cellM)}
      width={columns * cellM}
      height={rows * cellM}
      preserveAspectRatio="none"
      style={{ imageRendering: 'pixelated' }}
    />
  )
}
