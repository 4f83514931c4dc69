/** A message while its lines come: the three forms take fields, and give values or trouble for each. [SHEF2012] 4.2 to 4.6. */
import type { DecodedShefValue, ShefForm } from './shef.ts'
import {
  applyGroup,
  isGroup,
  isTrouble,
  locationPattern,
  readTerms,
  type ShefTerms,
  type Trouble,
  trouble,
  valueUnder,
} from './shefContext.ts'
import type { ShefField } from './shefLines.ts'

export interface MessageSink {
  nowUtcMs: number
  value: (value: DecodedShefValue) => void
  problem: (problem: Trouble) => void
}

/** Words of a field, each with its column. */
export function wordsOf(field: ShefField): ShefField[] {
  return [...field.text.matchAll(/\S+/g)].map((match) => ({
    text: match[0],
    line: field.line,
    column: field.column + match.index,
    comment: null,
  }))
}

export class ShefMessage {
  readonly form: ShefForm
  readonly isRevision: boolean
  readonly head: ShefField
  /** Number of the last continuation line. */
  continuation = 0
  /** Set when nothing more of the message can be understood. */
  isBroken = false
  #location = ''
  #terms: ShefTerms | null = null
  /** Of `.E`: the one code, and how many values have come. */
  #code: ShefField | null = null
  #count = 0
  /** Of `.B`: the codes, each with the terms under which it stands. */
  readonly #columns: { code: ShefField; terms: ShefTerms }[] = []

  constructor(form: ShefForm, isRevision: boolean, head: ShefField) {
    this.form = form
    this.isRevision = isRevision
    this.head = head
  }

  /** The first field of the first line: location or source, date, zone, groups. */
  takeHeader(field: ShefField, sink: MessageSink): void {
    const [location, ...tokens] = wordsOf(field)
    if (location === undefined) {
      this.#break(trouble(this.head, 'SHEF_HEADER', 'a location, a date, and then the data'), sink)
      return
    }
    if (!locationPattern.test(location.text)) {
      this.#break(trouble(location, 'SHEF_LOCATION', '3 to 8 of A-Z, 0-9 and _'), sink)
      return
    }
    this.#location = location.text
    const read = readTerms(tokens, this.head, sink.nowUtcMs)
    if (isTrouble(read)) {
      this.#break(read, sink)
      return
    }
    this.#terms = read.terms
    for (const group of read.rest) if (!this.isBroken) this.#takeGroup(group, sink)
  }

  /** A further field of the message itself (not of the body of `.B`). */
  takeField(field: ShefField, sink: MessageSink): void {
    const terms = this.#terms
    if (this.isBroken || terms === null) return
    if (isGroup(field.text)) {
      // Groups may stand side by side, blanks between.
      for (const group of wordsOf(field)) if (!this.isBroken) this.#takeGroup(group, sink)
      return
    }
    if (this.form === 'A') this.#takePair(field, terms, sink)
    else if (this.form === 'B') this.#takeColumn(field, terms, sink)
    else this.#takeStep(field, terms, sink)
  }

  /** One station of the body of `.B`. @returns how many values it gave */
  takeBody(fields: readonly ShefField[], sink: MessageSink): void {
    const [first, ...others] = fields
    if (first === undefined) return
    const [location, ...words] = wordsOf(first)
    if (location === undefined || !locationPattern.test(location.text)) {
      sink.problem(
        trouble(location ?? first, 'SHEF_LOCATION', 'a station of 3 to 8 of A-Z, 0-9 and _, a blank, and its values'),
      )
      return
    }
    let override: ShefField[] = []
    while (words[0] !== undefined && isGroup(words[0].text)) override = [...override, words.shift() as ShefField]
    const lead = restOf(first, words)
    // After a group the slash only parts it from the values; without one, an empty first field is a value not reported.
    const values = lead.text === '' && (override.length > 0 || others.length === 0) ? [...others] : [lead, ...others]
    while (values[0] !== undefined && isGroup(values[0].text)) override = [...override, values.shift() as ShefField]
    values.forEach((field, index) => {
      if (field.text === '') return
      const column = this.#columns[index]
      if (column === undefined) {
        const wanted = `no more than the ${this.#columns.length} values that the header names`
        sink.problem(trouble(field, 'SHEF_TOO_MANY_VALUES', wanted))
        return
      }
      let terms: ShefTerms | Trouble = column.terms
      for (const group of override) {
        if (!isTrouble(terms)) terms = applyGroup(terms, group, sink.nowUtcMs)
      }
      if (isTrouble(terms)) {
        sink.problem(terms)
        return
      }
      this.#put(terms, location.text, column.code, field, 0, sink)
    })
  }

  #takeGroup(field: ShefField, sink: MessageSink): void {
    if (this.#terms === null) return
    const next = applyGroup(this.#terms, field, sink.nowUtcMs)
    if (isTrouble(next)) {
      this.#break(next, sink)
      return
    }
    // A new time begins a new count of steps.
    if (this.form === 'E' && (next.wall !== this.#terms.wall || next.step !== this.#terms.step)) this.#count = 0
    this.#terms = next
  }

  /** `HG 5.75`. */
  #takePair(field: ShefField, terms: ShefTerms, sink: MessageSink): void {
    if (field.text === '') return
    const [code, value, extra] = wordsOf(field)
    if (code === undefined || value === undefined || extra !== undefined) {
      sink.problem(trouble(extra ?? field, 'SHEF_FIELD', 'a code, a blank and one value, then a slash'))
      return
    }
    this.#put(terms, this.#location, code, { ...value, comment: field.comment }, 0, sink)
  }

  #takeColumn(field: ShefField, terms: ShefTerms, sink: MessageSink): void {
    if (field.text === '') return
    if (/\s/.test(field.text)) {
      this.#break(trouble(field, 'SHEF_FIELD', 'one code between two slashes'), sink)
      return
    }
    this.#columns.push({ code: field, terms })
  }

  #takeStep(field: ShefField, terms: ShefTerms, sink: MessageSink): void {
    if (this.#code === null) {
      if (field.text === '') return
      if (/\s/.test(field.text)) {
        this.#break(trouble(field, 'SHEF_FIELD', 'one code between two slashes'), sink)
        return
      }
      this.#code = field
      return
    }
    if (terms.interval === null) {
      this.#break(trouble(field, 'SHEF_INTERVAL', 'a group such as DIH1 or DID1 before the values'), sink)
      return
    }
    const count = this.#count++
    if (field.text !== '') this.#put(terms, this.#location, this.#code, field, count, sink)
  }

  #put(
    terms: ShefTerms,
    location: string,
    code: ShefField,
    value: ShefField,
    stepCount: number,
    sink: MessageSink,
  ): void {
    const { form, isRevision } = this
    const made = valueUnder(terms, { form, location, isRevision, code, value, stepCount })
    if ('wanted' in made) {
      sink.problem(made)
      return
    }
    sink.value(made.value)
    if (made.warning !== null) sink.problem({ ...made.warning, severity: 'warned' })
  }

  #break(problem: Trouble, sink: MessageSink): void {
    this.isBroken = true
    sink.problem(problem)
  }
}

/** What is left of a field behind its first words. */
function restOf(field: ShefField, words: readonly ShefField[]): ShefField {
  const [first] = words
  if (first === undefined) return { ...field, text: '', column: field.column + field.text.length }
  const text = field.text.slice(first.column - field.column)
  return { ...field, text, column: first.column }
}
