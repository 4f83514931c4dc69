/**
 * SHEF text to values. Every line is accounted for: it gives values, holds a message together, is a comment, blank or a
 * bulletin's own line, or has a problem with its place, what was seen and what was wanted. Never throws for any text.
 * Source: [SHEF2012] 4 and 5.
 */

import { ShefSettler } from './settleShef.ts'
import type { DecodedShefValue, ShefDecoded, ShefForm, ShefOutcome, ShefProblem } from './shef.ts'
import { type Trouble, trouble } from './shefContext.ts'
import { cutFields, type ShefField, withoutComments } from './shefLines.ts'
import { type MessageSink, ShefMessage } from './shefMessage.ts'

const LONGEST_LINE = 1000
const MOST_BLANKS = 50
const tagPattern = /^\.([ABE])(R?)(\d{0,2})(?=[\s/]|$)/
/** Lines that bulletins put around messages: sequence, WMO heading, product name, end marks. */
const bulletinPatterns = [
  /^\d{3,4}$/,
  /^[A-Z]{4}\d{2} [A-Z]{4} \d{6}( [A-Z]{3})?$/,
  /^[A-Z0-9]{4,6}$/,
  /^\$\$$/,
  /^&&$/,
]

/** @param ask.nowUtcMs from which a date without its year is the nearest */
export function decodeShef(text: string, ask: { nowUtcMs: number }): ShefDecoded {
  const decoder = new Decoder(ask.nowUtcMs)
  const lines = text.split(/\r\n|\n|\r/)
  if (lines.at(-1) === '') lines.pop()
  for (const [index, line] of lines.entries()) decoder.take(line, index + 1)
  return decoder.end()
}

class Decoder implements MessageSink {
  readonly nowUtcMs: number
  readonly #values: DecodedShefValue[] = []
  readonly #problems: ShefProblem[] = []
  readonly #lines: ShefOutcome[] = []
  readonly #settler = new ShefSettler()
  #message: ShefMessage | null = null

  constructor(nowUtcMs: number) {
    this.nowUtcMs = nowUtcMs
  }

  value(value: DecodedShefValue): void {
    const repeat = this.#settler.add(value)
    if (repeat === 'first kept') {
      const wanted = 'one value for a station, code and time; .AR, .BR or .ER to replace it'
      this.problem({ code: 'SHEF_TWICE', line: value.line, column: value.column, seen: value.text, wanted })
      return
    }
    this.#values.push(value)
    if (repeat !== 'same') return
    const wanted = 'each value once'
    this.problem({
      code: 'SHEF_TWICE',
      line: value.line,
      column: value.column,
      seen: value.text,
      wanted,
      severity: 'warned',
    })
  }

  problem(problem: Trouble): void {
    this.#problems.push({ ...problem, seen: problem.seen.slice(0, 80), severity: problem.severity ?? 'refused' })
  }

  take(raw: string, line: number): void {
    const [valuesBefore, problemsBefore] = [this.#values.length, this.#problems.length]
    const frame = this.#takeLine(raw, line)
    const isRefused = this.#problems
      .slice(problemsBefore)
      .some(({ severity, line: at }) => severity === 'refused' && at === line)
    this.#lines.push(isRefused ? 'refused' : this.#values.length > valuesBefore ? 'values' : frame)
  }

  end(): ShefDecoded {
    this.#endBody()
    return { values: this.#values, problems: this.#problems, lines: this.#lines }
  }

  /** @returns what the line is where it gives no value and no problem */
  #takeLine(raw: string, line: number): ShefOutcome {
    if (raw.replaceAll('\u0001', '').replaceAll('\u0003', '').trim() === '') return 'blank'
    const start: ShefField = { text: raw.trim(), line, column: raw.length - raw.trimStart().length + 1, comment: null }
    if (raw.length > LONGEST_LINE)
      return this.#refuse(start, 'SHEF_LINE_TOO_LONG', `at most ${LONGEST_LINE} characters in a line`)
    const body = withoutComments(raw)
    if (body.trim() === '') return 'comment'
    const gap = new RegExp(` {${MOST_BLANKS + 1},}(?=\\S)`).exec(body)
    if (gap !== null && body.slice(0, gap.index).trim() !== '') {
      return this.#refuse({ ...start, column: gap.index + 1 }, 'SHEF_BLANKS', `at most ${MOST_BLANKS} blanks in a row`)
    }
    if (/^\.END\b/.test(body)) return this.#takeEnd(start)
    const tag = tagPattern.exec(body)
    if (tag !== null) {
      const [whole, form = 'A', revision = '', number = ''] = tag
      if (number === '') return this.#open(body, line, form as ShefForm, revision === 'R', whole.length)
      return this.#continue(body, start, form as ShefForm, Number(number), whole.length)
    }
    if (/^\s*\./.test(body)) {
      return this.#refuse(
        start,
        'SHEF_TAG',
        '.A, .AR, .B, .BR, .E, .ER, a continuation such as .A1, or .END, in column 1',
      )
    }
    if (this.#message?.form === 'B') return this.#takeStations(body, line)
    if (bulletinPatterns.some((pattern) => pattern.test(start.text))) return 'outside'
    return this.#refuse(start, 'SHEF_OUTSIDE', 'a line of a message; text between messages goes behind a colon')
  }

  #open(body: string, line: number, form: ShefForm, isRevision: boolean, tagLength: number): ShefOutcome {
    this.#endBody()
    const head: ShefField = { text: body.trim(), line, column: 1, comment: null }
    const message = new ShefMessage(form, isRevision, head)
    this.#message = message
    const fields = this.#fields(body, line, tagLength)
    if (fields === null) {
      message.isBroken = true
      return 'frame'
    }
    const [header, ...rest] = fields
    if (header !== undefined) message.takeHeader(header, this)
    for (const field of withoutTrailing(rest)) message.takeField(field, this)
    return 'frame'
  }

  #continue(body: string, start: ShefField, form: ShefForm, number: number, tagLength: number): ShefOutcome {
    const message = this.#message
    if (message === null || message.form !== form || number !== message.continuation + 1) {
      if (message !== null) message.isBroken = true
      const expected =
        message === null ? 'a message before its continuation' : `.${message.form}${message.continuation + 1} next`
      return this.#refuse(start, 'SHEF_CONTINUATION', expected)
    }
    message.continuation = number
    if (message.isBroken) return this.#broken(start, message)
    const fields = this.#fields(body, start.line, tagLength)
    if (fields === null) {
      message.isBroken = true
      return 'frame'
    }
    // The slash at the start of a line, or at the end of the one before, only parts two fields.
    const kept = fields[0]?.text === '' ? fields.slice(1) : fields
    for (const field of withoutTrailing(kept)) message.takeField(field, this)
    return 'frame'
  }

  #takeStations(body: string, line: number): ShefOutcome {
    const message = this.#message as ShefMessage
    const first: ShefField = {
      text: body.trim(),
      line,
      column: body.length - body.trimStart().length + 1,
      comment: null,
    }
    if (message.isBroken) return this.#broken(first, message)
    const { openQuote } = cutFields(body, line, 1)
    if (openQuote !== null) return this.#refuse({ ...first, column: openQuote }, 'SHEF_QUOTE_OPEN', 'a second quote')
    let column = 1
    for (const text of splitOutsideQuotes(body)) {
      const { fields } = cutFields(text, line, column)
      if (text.trim() !== '') message.takeBody(fields, this)
      column += text.length + 1
    }
    return 'no report'
  }

  #takeEnd(start: ShefField): ShefOutcome {
    if (this.#message?.form !== 'B') return this.#refuse(start, 'SHEF_TAG', '.END only after .B')
    this.#message = null
    return 'frame'
  }

  /** A body that was not ended may have lost its last stations on the way. */
  #endBody(): void {
    const message = this.#message
    this.#message = null
    if (message?.form !== 'B') return
    this.problem(trouble(message.head, 'SHEF_END_MISSING', '.END after the last station: the message may be cut off'))
    this.#lines[message.head.line - 1] = 'refused'
  }

  #fields(body: string, line: number, tagLength: number): ShefField[] | null {
    const { fields, openQuote } = cutFields(body.slice(tagLength), line, tagLength + 1)
    if (openQuote === null) return fields
    this.problem({
      code: 'SHEF_QUOTE_OPEN',
      line,
      column: openQuote,
      seen: body.slice(openQuote - 1),
      wanted: 'a second quote',
    })
    return null
  }

  #broken(start: ShefField, message: ShefMessage): ShefOutcome {
    return this.#refuse(
      start,
      'SHEF_MESSAGE_BROKEN',
      `a message that can be read: see its problem from line ${message.head.line} on`,
    )
  }

  #refuse(field: ShefField, code: ShefProblem['code'], wanted: string): ShefOutcome {
    this.problem(trouble(field, code, wanted))
    return 'refused'
  }
}

/** A slash at the end of a line is no value that was not reported. */
function withoutTrailing(fields: readonly ShefField[]): readonly ShefField[] {
  return fields.at(-1)?.text === '' ? fields.slice(0, -1) : fields
}

function splitOutsideQuotes(text: string): string[] {
  const parts: string[] = ['']
  let isQuoted = false
  for (const character of text) {
    if (character === '"') isQuoted = !isQuoted
    if (character === ',' && !isQuoted) parts.push('')
    else parts[parts.length - 1] += character
  }
  return parts
}
