/** Text at fixed columns, in the characters that a bulletin may carry. */

export interface ColumnField {
  /** From 1. */
  column: number
  /** Most characters; null where the line may run on. */
  width: number | null
  name: string
  text: string
}

/**
 * One line with each field at its column.
 * @param fields in order of their columns
 * @returns the line without blanks at its end, and the names of fields that did not fit and were cut
 */
export function lineAtColumns(fields: readonly ColumnField[]): { line: string; cut: string[] } {
  let line = ''
  const cut: string[] = []
  for (const { column, width, name, text } of fields) {
    const fitting = width === null ? text : text.slice(0, width).trimEnd()
    if (fitting !== text) cut.push(name)
    line = line.padEnd(column - 1) + fitting
  }
  return { line: line.trimEnd(), cut }
}

/** Capitals, figures and plain marks: accents are taken off, other characters become a blank, blanks are closed up. */
export function bulletinText(text: string): string {
  return text
    .normalize('NFKD')
    .replace(/[\u0300-\u036f]/g, '')
    .replace(/[’‘]/g, "'")
    .replace(/[“”]/g, '"')
    .replace(/[–—]/g, '-')
    .toUpperCase()
    .replace(/[^ -~]/g, ' ')
    .replace(/ +/g, ' ')
    .trim()
}

/** Lines of at most `width` characters, broken at blanks; a word longer than a line is broken where it must be. */
export function wrapWords(text: string, width: number): string[] {
  const lines: string[] = []
  let line = ''
  for (const word of text.split(' ').filter(Boolean)) {
    let rest = word
    if (line !== '' && line.length + 1 + rest.length <= width) {
      line = `${line} ${rest}`
      continue
    }
    if (line !== '') lines.push(line)
    while (rest.length > width) {
      lines.push(rest.slice(0, width))
      rest = rest.slice(width)
    }
    line = rest
  }
  if (line !== '') lines.push(line)
  return lines
}
