/**
 * What people and programs paste, reduced to plain characters before it is read as an amount: full-width and other
 * decimal digits, the many dashes and spaces, curly inch marks, invisible marks, fraction signs. Nothing is dropped
 * that could change a value. (Unicode's own compatibility folding would turn 1¼ into 11/4 and 1² into 12.)
 */
const invisible = /[\u00AD\u200B-\u200F\u202A-\u202E\u2060-\u2069\uFEFF]|\uFE0E|\uFE0F/gu
const space = /[\s\u00A0\u1680\u2000-\u200A\u202F\u205F\u3000]+/gu
const dash = /[\u2010-\u2015\u2212\u2796\uFE58\uFE63\uFF0D]/gu
const doublePrime = /[\u201C-\u201F\u2033\u3003\u275D\u275E]|[\u2018\u2019\u2032']{2}/gu
const slash = /[\u2044\u2215\u29F8]/gu
const combining = /\p{Mn}/gu
/** First code point of runs of ten digits 0-9: Arabic-Indic, extended Arabic-Indic, Devanagari, Bengali, Thai. */
const digitRuns = [0x0660, 0x06f0, 0x0966, 0x09e6, 0x0e50]
const vulgarFractions: Record<string, string> = {
  '¼': '1/4',
  '½': '1/2',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
  '⅕': '1/5',
  '⅖': '2/5',
  '⅗': '3/5',
  '⅘': '4/5',
  '⅒': '1/10',
}
const vulgarFraction = new RegExp(`[${Object.keys(vulgarFractions).join('')}]`, 'gu')
const plain = /^[\u0020-\u007E]*$/

/** Lower case, single spaces, no accents, none at the ends. `１．２５″` gives `1.25"`; `1¼` gives `1 1/4`. */
export function plainText(text: string): string {
  const folded = plain.test(text) ? text : fold(text)
  const single = folded.replace(space, ' ').trim().toLowerCase()
  const quoted = /^"(.*)"$/.exec(single) ?? /^'(.*)$/.exec(single)
  return (quoted?.[1] ?? single).replace("''", '"').trim()
}

function fold(text: string): string {
  return text
    .replace(invisible, '')
    .replace(vulgarFraction, (sign) => ` ${vulgarFractions[sign]}`)
    .replace(/[\uFF01-\uFF5E]/gu, (wide) => String.fromCharCode(wide.charCodeAt(0) - 0xfee0))
    .replace(/\p{Nd}/gu, asciiDigit)
    .replace(dash, '-')
    .replace(doublePrime, '"')
    .replace(slash, '/')
    .replace(/[\u3002\u00B7\u066B]/gu, '.') // ideographic full stop, raised point, Arabic decimal mark
    .replace(/\u3001/gu, ',')
    .replace(/m²/gu, 'm2')
    .normalize('NFD')
    .replace(combining, '')
}

function asciiDigit(digit: string): string {
  const codePoint = digit.codePointAt(0) ?? 0
  const run = digitRuns.find((first) => codePoint >= first && codePoint < first + 10)
  return run === undefined ? digit : String(codePoint - run)
}
