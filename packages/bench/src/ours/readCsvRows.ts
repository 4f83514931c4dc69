/** Rows of a plain CSV (no quotes) as they come, for outputs of some hundred megabytes. */
import { createReadStream } from 'node:fs'
import { createInterface } from 'node:readline'
import { createGunzip } from 'node:zlib'

/** @param onRow  called with the cells of each row after the header; `column` finds a cell by its heading */
export async function readCsvRows(
  path: string,
  onRow: (cells: readonly string[], column: (name: string) => number) => void,
): Promise<void> {
  const file = createReadStream(path)
  const input = path.endsWith('.gz') ? file.pipe(createGunzip()) : file
  const places = new Map<string, number>()
  const column = (name: string): number => {
    const place = places.get(name)
    if (place === undefined) throw new Error(`${path} has no column "${name}": it has ${[...places.keys()].join(' ')}`)
    return place
  }
  for await (const line of createInterface({ input, crlfDelay: Number.POSITIVE_INFINITY })) {
    if (line === '') continue
    const cells = line.split(',')
    if (places.size === 0) for (const [place, name] of cells.entries()) places.set(name, place)
    else onRow(cells, column)
  }
}
