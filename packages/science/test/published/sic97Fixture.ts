import { readFileSync } from 'node:fs'

export interface Sic97Points {
  ids: number[]
  xM: Float64Array
  yM: Float64Array
  /** Tenths of a millimetre, the unit in which the comparison is scored. */
  rainTenthMm: Float64Array
}

/** The comparison's 100 given and 367 hidden points; source and licence stand in the file. */
export function readSic97(): { given: Sic97Points; predict: Sic97Points } {
  const file = JSON.parse(readFileSync(new URL('./fixtures/sic97.json', import.meta.url), 'utf8')) as {
    given: number[][]
    predict: number[][]
  }
  const points = (rows: number[][]): Sic97Points => ({
    ids: rows.map((row) => row[0]!),
    xM: Float64Array.from(rows, (row) => row[1]!),
    yM: Float64Array.from(rows, (row) => row[2]!),
    rainTenthMm: Float64Array.from(rows, (row) => row[3]!),
  })
  return { given: points(file.given), predict: points(file.predict) }
}
