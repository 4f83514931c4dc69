/** One value: a number, T, or a mark for missing; a qualifier directly behind it. [SHEF2012] 4.4.6, 4.4.7, 5.1.1, 5.1.2, App. J. */
import type { ShefDatum, ShefProblemCode } from './shef.ts'
import { qualifierLetters } from './shefCodes.ts'

export interface ReadShefValue {
  datum: ShefDatum
  /** Null where none stands behind the value. */
  qualifier: string | null
  /** True where hundredths were read from a number without a point. */
  wasHundredths: boolean
}

export type ShefValueAnswer =
  | ({ kind: 'value' } & ReadShefValue)
  | { kind: 'problem'; code: ShefProblemCode; wanted: string }

const traceElements = new Set(['PC', 'PP', 'PY', 'SD', 'SF', 'SW'])
/** Elements that are given in hundredths where there is no point. */
const hundredthElements = new Set(['PC', 'PP', 'PY'])
const missingPattern = /^(?:\+|-|m|mm|M|MM|-9999(?:\.0*)?)$/
const numberPattern = /^([+-]?(?:\d+\.?\d*|\.\d+))([A-Za-z])?$/

/** @param element two letters of the code as it was given */
export function readShefValue(text: string, element: string, units: 'english' | 'metric'): ShefValueAnswer {
  if (missingPattern.test(text)) return value({ kind: 'missing' }, null)
  const marked = /^(\+|-|M|-9999(?:\.0*)?)([A-Z])$/.exec(text)
  if (marked !== null) return qualified({ kind: 'missing' }, marked[2])
  const trace = /^[Tt]([A-Z])?$/.exec(text)
  if (trace !== null) {
    if (!traceElements.has(element)) {
      return problem('SHEF_TRACE', 'a number: only PC, PP, PY, SD, SF and SW may be a trace')
    }
    return qualified({ kind: 'trace' }, trace[1])
  }
  const parts = numberPattern.exec(text)
  const [, number = '', letter] = parts ?? []
  if (parts === null || number.length > 20) {
    return problem('SHEF_VALUE', 'a number, T, or + for missing, with nothing but one letter behind it')
  }
  const plain = Number(number)
  if (!hundredthElements.has(element) || number.includes('.') || plain === 0) {
    return qualified({ kind: 'number', value: plain, text: number }, letter)
  }
  if (units === 'metric') return problem('SHEF_DECIMAL_MISSING', 'millimetres with their decimal point')
  const datum: ShefDatum = { kind: 'number', value: plain / 100, text: number }
  const answer = qualified(datum, letter)
  return answer.kind === 'value' ? { ...answer, wasHundredths: true } : answer
}

function qualified(datum: ShefDatum, letter: string | undefined): ShefValueAnswer {
  if (letter === undefined) return value(datum, null)
  if (qualifierLetters.includes(letter)) return value(datum, letter)
  return problem('SHEF_QUALIFIER', `one of ${qualifierLetters.split('').join(' ')} behind the value`)
}

function value(datum: ShefDatum, qualifier: string | null): ShefValueAnswer {
  return { kind: 'value', datum, qualifier, wasHundredths: false }
}

function problem(code: ShefProblemCode, wanted: string): ShefValueAnswer {
  return { kind: 'problem', code, wanted }
}
