/**
 * A number that a person typed, without sign or unit: what it is, or the few things it could be, or that it is none.
 * Which candidates a gauge could have caught is decided in parseAmount.ts.
 */
import { type ExactNumber, exactFromDigits, exactFromFraction } from './exactNumber.ts'

export type DecimalMark = '.' | ',' | 'either'

export type NumberAnswer =
  | { kind: 'number'; value: ExactNumber }
  | { kind: 'unclear'; why: 'decimal' | 'fraction' | 'letters'; candidates: ExactNumber[] }
  | { kind: 'unreadable'; why: 'twoPoints' | 'notANumber' }

const notANumber: NumberAnswer = { kind: 'unreadable', why: 'notANumber' }
/** Fractions people do mean; other denominators may be a slip of the key beside the point (`1/25` for `1.25`). */
const usualDenominators = new Set(['2', '4', '5', '8', '10', '16', '32', '64', '100', '1000'])

/** @param text plain text (see plainText.ts), for instance `0.25`, `1 1/4`, `1,250`, `2.5e-1`. Time O(length). */
export function readNumber(text: string, mark: DecimalMark): NumberAnswer {
  if (/^\d+$/.test(text)) return readWhole(text)
  const marked = /^(\d*)([.,])(\d*)$/.exec(text)
  if (marked !== null) return readMarked(marked[1] ?? '', marked[2] ?? '', marked[3] ?? '', mark)
  if (/^\d*([.,])\1\d+$/.test(text)) return unclear('decimal', [fromParts(text.split(/[.,]+/))])
  if (/^[\d.,]*$/.test(text)) return readManyMarks(text, mark)
  if (/^\d+ \d+$/.test(text)) {
    const [whole = '', rest = ''] = text.split(' ')
    const joined = whole.startsWith('0') ? [] : [exactFromDigits(whole + rest, '')]
    return unclear('decimal', [exactFromDigits(whole, rest), ...joined])
  }
  if (text.includes('/')) return readFraction(text)
  if (/e/.test(text)) return readExponent(text, mark)
  if (/^[\doil|.,]*\d[\doil|.,]*$|^[o.,]*o[o.,]*$/.test(text)) return readLetters(text, mark)
  return notANumber
}

function readWhole(text: string): NumberAnswer {
  const asWhole = exactFromDigits(text, '')
  const isPadded = text.length > 1 && text.startsWith('0') && /[1-9]/.test(text)
  if (!isPadded) return { kind: 'number', value: asWhole }
  // A point was probably lost: `04` for `.04` or `0.4`.
  return unclear('decimal', [exactFromDigits('', text), exactFromDigits('0', text.slice(1)), asWhole])
}

function readMarked(whole: string, seenMark: string, decimals: string, mark: DecimalMark): NumberAnswer {
  if (whole === '' && decimals === '') return notANumber
  const value = exactFromDigits(whole, decimals)
  if (seenMark === mark) return { kind: 'number', value }
  if (decimals === '') {
    return seenMark === '.' && mark === 'either' ? { kind: 'number', value } : unclear('decimal', [value])
  }
  const mayGroup = decimals.length === 3 && /^[1-9]\d{0,2}$/.test(whole)
  if (!mayGroup) return { kind: 'number', value }
  return unclear('decimal', [value, exactFromDigits(whole + decimals, '')])
}

function readManyMarks(text: string, mark: DecimalMark): NumberAnswer {
  for (const [group, decimal] of [
    [',', '.'],
    ['.', ','],
  ] as const) {
    const grouped = new RegExp(`^([1-9]\\d{0,2}(?:\\${group}\\d{3})+)(?:\\${decimal}(\\d+))?$`).exec(text)
    if (grouped === null) continue
    const value = exactFromDigits((grouped[1] ?? '').replaceAll(group, ''), grouped[2] ?? '')
    return mark === group ? unclear('decimal', [value]) : { kind: 'number', value }
  }
  return { kind: 'unreadable', why: /\d/.test(text) ? 'twoPoints' : 'notANumber' }
}

function readFraction(text: string): NumberAnswer {
  const parts = /^(?:(\d+)[ -])?(\d{1,4})\/([1-9]\d{0,3})$/.exec(text)
  if (parts === null) return notANumber
  const [whole, above = '', below = ''] = [parts[1], parts[2], parts[3]]
  const denominator = BigInt(below)
  const value = exactFromFraction(BigInt(whole ?? '0') * denominator + BigInt(above), denominator)
  if (whole !== undefined && BigInt(above) >= denominator) return notANumber
  if (value !== null && usualDenominators.has(below)) return { kind: 'number', value }
  const slip = whole === undefined ? [exactFromDigits(above, below)] : []
  return unclear('fraction', value === null ? slip : [...slip, value])
}

function readExponent(text: string, mark: DecimalMark): NumberAnswer {
  const parts = /^([\d.,]+)e([+-]?\d{1,2})$/.exec(text)
  if (parts === null) return notANumber
  const mantissa = readNumber(parts[1] ?? '', mark)
  if (mantissa.kind !== 'number') return notANumber
  const power = Number(parts[2])
  const { numerator, denominator, decimals } = mantissa.value
  const shift = 10n ** BigInt(Math.abs(power))
  return {
    kind: 'number',
    value: {
      numerator: power > 0 ? numerator * shift : numerator,
      denominator: power < 0 ? denominator * shift : denominator,
      decimals: Math.max(0, decimals - power),
    },
  }
}

function readLetters(text: string, mark: DecimalMark): NumberAnswer {
  const answer = readNumber(text.replaceAll('o', '0').replaceAll(/[il|]/g, '1'), mark)
  if (answer.kind === 'unreadable') return notANumber
  return unclear('letters', answer.kind === 'number' ? [answer.value] : answer.candidates)
}

function fromParts(parts: string[]): ExactNumber {
  return exactFromDigits(parts[0] ?? '', parts[1] ?? '')
}

function unclear(why: 'decimal' | 'fraction' | 'letters', candidates: ExactNumber[]): NumberAnswer {
  return candidates.length === 0 ? notANumber : { kind: 'unclear', why, candidates }
}
