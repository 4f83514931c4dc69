/**
 * Names the make of a learned model: the science's own version and the shape of what it learns. A model that was kept by
 * another make is learned anew instead of being misread.
 */
import { createHash } from 'node:crypto'
import { emptyDailyTable, learnModel, modelVersion, placeGauges } from '@gaugewright/science'

let known: string | null = null

export function scienceVersion(): string {
  known ??= `${modelVersion}-${createHash('sha1').update(shapeOf(smallestModel())).digest('base64url').slice(0, 6)}`
  return known
}

function smallestModel(): unknown {
  const gauges = placeGauges([
    { id: 'a', xM: 0, yM: 0, elevationM: null },
    { id: 'b', xM: 3000, yM: 4000, elevationM: 200 },
  ])
  return learnModel(gauges, emptyDailyTable(2, 0, 0))
}

/** Names of fields, all the way down, with the kind of what they hold. */
export function shapeOf(value: unknown): string {
  if (ArrayBuffer.isView(value)) return value.constructor.name
  if (Array.isArray(value)) return value.length === 0 ? '[]' : `[${shapeOf(value[0])}]`
  if (value === null || typeof value !== 'object') return typeof value
  const fields = Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1))
  return `{${fields.map(([name, held]) => `${name}:${shapeOf(held)}`).join(',')}}`
}
