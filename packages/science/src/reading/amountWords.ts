/**
 * Words that observers, sheets and programs write in the place of an amount, in English and Spanish, and the names of
 * units. Lower case, without accents (see plainText.ts). Words that may mean either "looked and found nothing" or "did
 * not look" are kept apart: they are asked about.
 */
const trace = 't|tr|trc|trace|traces|traza|trazas|inap|inapreciable|inappreciable|ip'
const zero = 'zero|cero|nil|dry|seco|no rain|no precip|no precipitation|sin lluvia|sin precipitacion'
const missing =
  'm|na|n/a|#n/a|nan|null|missing|no reading|not read|no data|s/d|sin dato|sin datos|sin lectura|no leido|falta|ausente'
const zeroOrMissing = 'none|nothing|no|nada|ninguna|ninguno|-|--|---|/|x'

export type AmountWord = 'trace' | 'zero' | 'missing' | 'zeroOrMissing'

const words = new Map<string, AmountWord>()
for (const [meaning, list] of [
  ['trace', trace],
  ['zero', zero],
  ['missing', missing],
  ['zeroOrMissing', zeroOrMissing],
] as const) {
  for (const word of list.split('|')) words.set(word, meaning)
}

/** What a word stands for, or `null` where it is not one of these words. A full stop at the end does not matter. */
export function amountWord(plain: string): AmountWord | null {
  return words.get(plain) ?? words.get(plain.replace(/\.$/, '')) ?? null
}

/** Units that are named in a text. A litre on a square metre is a millimetre. `cm` is asked about: see parseAmount. */
export type WrittenUnit = 'mm' | 'in' | 'cm' | 'hundredths'

const unitNames: Record<WrittenUnit, string> = {
  mm: 'mm|millimetre|millimetres|millimeter|millimeters|milimetro|milimetros|l/m2|l/m^2|litros|litros/m2',
  in: 'in|inch|inches|"|pulg|pulgada|pulgadas|plg',
  cm: 'cm|centimetre|centimetres|centimeter|centimeters|centimetro|centimetros',
  hundredths: 'hundredths|hundredth|centesimas|centesima',
}
const units = Object.entries(unitNames)
  .flatMap(([unit, names]) => names.split('|').map((name) => ({ name, unit: unit as WrittenUnit })))
  .sort((one, other) => other.name.length - one.name.length)

/** A number and the unit written behind it; `unit` is null where none is. */
export function splitUnit(plain: string): { number: string; unit: WrittenUnit | null } {
  for (const { name, unit } of units) {
    for (const ending of [name, `${name}.`]) {
      if (!plain.endsWith(ending)) continue
      const number = plain.slice(0, -ending.length).trim()
      if (/[0-9.,]$/.test(number)) return { number, unit }
    }
  }
  return { number: plain, unit: null }
}
