import { expect, it } from 'vitest'
import { CsvSplitter } from './csvSplitter.ts'

/** Rows of a text that comes in blocks of the given size. */
function rowsOf(text: string, blockSize: number, delimiter = ','): { line: number; fields: string[] }[] {
  const splitter = new CsvSplitter('file.csv', delimiter)
  const rows = []
  for (let from = 0; from < text.length; from += blockSize)
    rows.push(...splitter.push(text.slice(from, from + blockSize)))
  rows.push(...splitter.end())
  return rows
}

const text = 'a,b,c\r\n1,"two, and ""half""\nmore",3\n\n"",4\r\nlast,5"6,7'
const rows = [
  { line: 1, fields: ['a', 'b', 'c'] },
  { line: 2, fields: ['1', 'two, and "half"\nmore', '3'] },
  { line: 5, fields: ['', '4'] },
  { line: 6, fields: ['last', '5"6', '7'] },
]

it.each([1, 2, 3, 5, 7, 11, 1000])(
  'gives the same rows and lines however the text is cut: blocks of %i',
  (blockSize) => {
    expect(rowsOf(text, blockSize)).toEqual(rows)
  },
)

it('counts the lines inside a quoted field, so that the next row is named rightly', () => {
  expect(rowsOf('"x\ny\nz",1\nq,2\n', 4).map(({ line }) => line)).toEqual([1, 4])
})

it('splits by semicolon and tab', () => {
  expect(rowsOf('a;b,c\n', 100, ';')[0]?.fields).toEqual(['a', 'b,c'])
  expect(rowsOf('a\t"b\tc"\n', 2, '\t')[0]?.fields).toEqual(['a', 'b\tc'])
})

it('refuses a quotation mark that is never closed, naming the line on which it is opened', () => {
  expect(() => rowsOf('a,b\n1,2\n3,"4\n5,6\n', 3)).toThrow(/CSV_QUOTE_OPEN: file\.csv line 3/)
})

it('does not wait for the end of the file before it refuses an open quotation mark', () => {
  const splitter = new CsvSplitter('file.csv', ',')
  const push = (): void => {
    for (let block = 0; block < 100; block++) splitter.push(`${block === 0 ? '"' : ''}${'x'.repeat(99_999)}\n`)
  }
  expect(push).toThrow(/CSV_QUOTE_OPEN/)
})
