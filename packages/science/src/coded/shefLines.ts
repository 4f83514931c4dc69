/** A line of SHEF cut into its fields: comments taken out, kept texts put aside, columns remembered. [SHEF2012] 5.3. */

export interface ShefField {
  /** Without blanks at its ends and without its kept comment. */
  text: string
  line: number
  /** Of the first character of the text; where it is empty, of the separator behind it. */
  column: number
  /** Text in quotes; null where there is none. */
  comment: string | null
}

export interface CutLine {
  fields: ShefField[]
  /** Column of a quote that is not closed; null where all are. */
  openQuote: number | null
}

/** Blank out comments: from a colon to the next or to the end of the line, but not within quotes. Columns stay. */
export function withoutComments(line: string): string {
  if (!line.includes(':')) return line
  let isComment = false
  let isQuoted = false
  let result = ''
  for (const character of line) {
    if (character === '"' && !isComment) isQuoted = !isQuoted
    if (character === ':' && !isQuoted) {
      isComment = !isComment
      result += ' '
    } else result += isComment ? ' '.repeat(character.length) : character
  }
  return result
}

/** @param startColumn of the first character of `text`, from 1 */
export function cutFields(text: string, line: number, startColumn: number): CutLine {
  const fields: ShefField[] = []
  let openQuote: number | null = null
  let start = 0
  for (let index = 0; index <= text.length; index++) {
    const character = text[index]
    if (character === '"') openQuote = openQuote === null ? startColumn + index : null
    if (index < text.length && (character !== '/' || openQuote !== null)) continue
    fields.push(fieldFrom(text.slice(start, index), line, startColumn + start))
    start = index + 1
  }
  return { fields, openQuote }
}

function fieldFrom(raw: string, line: number, startColumn: number): ShefField {
  const quotes = raw.includes('"') ? /^([^"]*)"([^"]*)"\s*$/.exec(raw) : null
  const body = quotes?.[1] ?? raw
  const lead = body.length - body.trimStart().length
  return { text: body.trim(), line, column: startColumn + lead, comment: quotes?.[2] ?? null }
}
