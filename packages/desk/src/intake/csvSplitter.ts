/**
 * Cuts text blocks into the rows of a CSV file (RFC 4180, any one-character delimiter), knowing the line on which each row
 * begins and holding one row at most. Our own because a refusal must name the line, and because a quote that is never
 * closed must be refused after a bounded wait instead of drawing the whole file into memory.
 */
import { IntakeRefusal } from '../ports/intakeRefusal.ts'
import { placeText } from './refusal.ts'

/** A row that is longer than this has lost a closing quote. A wide table of 25,000 gauges needs about 0.3 million. */
const MAX_ROW_CHARS = 4_000_000

export interface CsvRow {
  /** Line of the file on which the row begins, from 1. */
  line: number
  fields: string[]
}

export class CsvSplitter {
  readonly #path: string
  readonly #delimiter: string
  #rest = ''
  #line = 1

  constructor(path: string, delimiter: string) {
    this.#path = path
    this.#delimiter = delimiter
  }

  /**
   * Take the next block and give the rows that are now whole. Empty lines are left out (their numbers count).
   * @throws {IntakeRefusal} CSV_QUOTE_OPEN
   */
  push(block: string): CsvRow[] {
    return this.#cut(this.#rest === '' ? block : this.#rest + block, false)
  }

  /** The last row, when the file does not end with a line break. @throws {IntakeRefusal} CSV_QUOTE_OPEN */
  end(): CsvRow[] {
    return this.#cut(this.#rest, true)
  }

  #cut(text: string, isEnd: boolean): CsvRow[] {
    const rows: CsvRow[] = []
    let from = 0
    while (from < text.length) {
      let lineEnd = text.indexOf('\n', from)
      if (lineEnd < 0) {
        if (!isEnd) break
        lineEnd = text.length
      }
      const contentEnd = text.charCodeAt(lineEnd - 1) === 13 && lineEnd > from ? lineEnd - 1 : lineEnd
      const content = text.slice(from, contentEnd)
      if (!content.includes('"')) {
        if (content !== '') rows.push({ line: this.#line, fields: content.split(this.#delimiter) })
        this.#line++
        from = lineEnd + 1
        continue
      }
      const quotedRow = this.#quotedRow(text, from, isEnd)
      if (quotedRow === null) break
      rows.push({ line: this.#line, fields: quotedRow.fields })
      this.#line += quotedRow.lineCount
      from = quotedRow.next
    }
    this.#rest = text.slice(from)
    if (this.#rest.length > MAX_ROW_CHARS) throw this.#openQuote()
    return rows
  }

  /** A row with quotes in it, from its first character; null when its end has not come yet. */
  #quotedRow(text: string, from: number, isEnd: boolean): { fields: string[]; next: number; lineCount: number } | null {
    const fields: string[] = []
    let lineCount = 1
    let index = from
    for (;;) {
      let field: string
      if (text[index] === '"') {
        const close = closingQuote(text, index + 1)
        // A quote on the last character of a block may be the first half of a doubled one.
        if (close < 0 || (close === text.length - 1 && !isEnd)) {
          if (isEnd) throw this.#openQuote()
          return null
        }
        field = text.slice(index + 1, close).replaceAll('""', '"')
        lineCount += countLineBreaks(field)
        index = close + 1
        const end = this.#fieldEnd(text, index)
        if (end === null) {
          if (!isEnd) return null
          fields.push(field)
          return { fields, next: text.length, lineCount }
        }
        field += text.slice(index, end).trim()
        index = end
      } else {
        const end = this.#fieldEnd(text, index) ?? (isEnd ? text.length : null)
        if (end === null) return null
        field = text.slice(index, end)
        index = end
      }
      fields.push(field)
      if (text[index] === this.#delimiter) {
        index++
        continue
      }
      return { fields, next: text[index] === '\r' ? index + 2 : index + 1, lineCount }
    }
  }

  /** Index of the delimiter or line break that ends the field; null when the block ends first. */
  #fieldEnd(text: string, from: number): number | null {
    for (let index = from; index < text.length; index++) {
      const character = text[index]
      if (character === this.#delimiter || character === '\n') return index
      if (character === '\r' && text[index + 1] === '\n') return index
    }
    return null
  }

  #openQuote(): IntakeRefusal {
    return new IntakeRefusal(
      'CSV_QUOTE_OPEN',
      `${placeText({ path: this.#path, line: this.#line })}: a quotation mark is opened and never closed.`,
      'Close it, or double it if it belongs to the text.',
    )
  }
}

function closingQuote(text: string, from: number): number {
  let index = text.indexOf('"', from)
  while (index >= 0 && text[index + 1] === '"') index = text.indexOf('"', index + 2)
  return index
}

function countLineBreaks(text: string): number {
  let count = 0
  for (let index = text.indexOf('\n'); index >= 0; index = text.indexOf('\n', index + 1)) count++
  return count
}
