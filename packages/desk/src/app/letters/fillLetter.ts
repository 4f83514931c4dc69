/** Templates of letters: what stands in braces is filled, what is not known there is named. Pure. */
import { type LetterPlaceholder, letterPlaceholders } from '@gaugewright/contract'

export type LetterFill = Partial<Record<LetterPlaceholder, string>>

const inBraces = /\{([^{}\n]{1,40})\}/g

/** Placeholders that no letter knows, in their order, each once. */
export function unknownPlaceholders(text: string): string[] {
  const known = new Set<string>(letterPlaceholders)
  return [...new Set([...text.matchAll(inBraces)].map((match) => match[1]!))].filter((name) => !known.has(name))
}

/** What is not given stays as it stands, so that whoever reads the letter before it goes sees the gap. */
export function fillLetter(
  template: { subject: string; text: string },
  fill: LetterFill,
): { subject: string; text: string } {
  const filled = (text: string) => text.replace(inBraces, (whole, name) => fill[name as LetterPlaceholder] ?? whole)
  return { subject: filled(template.subject).replace(/\s+/g, ' ').trim(), text: filled(template.text) }
}
