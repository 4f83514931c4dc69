import fc from 'fast-check'
import Papa from 'papaparse'
import { expect, it } from 'vitest'
import { CsvSplitter } from '../../src/intake/csvSplitter.ts'

const field = fc.string({ unit: fc.constantFrom('a', 'é', '7', ' ', '"', ',', ';', '\n', '\r\n', '漢'), maxLength: 6 })

it('reads back every table that papaparse writes, in blocks of any size', () => {
  fc.assert(
    fc.property(
      fc
        .integer({ min: 2, max: 4 })
        .chain((width) =>
          fc.array(fc.array(field, { minLength: width, maxLength: width }), { minLength: 1, maxLength: 6 }),
        ),
      fc.constantFrom(',', ';', '\t'),
      fc.constantFrom('\n', '\r\n'),
      fc.integer({ min: 1, max: 40 }),
      (table, delimiter, newline, blockSize) => {
        const text = Papa.unparse(table, { delimiter, newline, quotes: false })
        const splitter = new CsvSplitter('file.csv', delimiter)
        const rows: string[][] = []
        for (let from = 0; from < text.length; from += blockSize) {
          rows.push(...splitter.push(text.slice(from, from + blockSize)).map(({ fields }) => fields))
        }
        rows.push(...splitter.end().map(({ fields }) => fields))
        expect(rows).toEqual(table)
      },
    ),
    { seed: 41, numRuns: 400 },
  )
})
