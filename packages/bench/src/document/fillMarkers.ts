/** Parts of a document that a program writes, between markers that people leave alone. */

/**
 * Puts each part between `<!-- bench:name -->` and `<!-- /bench:name -->`.
 * @throws {Error} a marker that the document lacks (names it)
 */
export function fillMarkers(document: string, parts: Readonly<Record<string, string>>): string {
  let filled = document
  for (const [name, part] of Object.entries(parts)) {
    const opening = `<!-- bench:${name} -->`
    const closing = `<!-- /bench:${name} -->`
    const from = filled.indexOf(opening)
    const to = filled.indexOf(closing, from)
    if (from < 0 || to < 0) throw new Error(`the document has no ${opening} … ${closing}: put both back`)
    filled = `${filled.slice(0, from + opening.length)}\n${part.trim()}\n${filled.slice(to)}`
  }
  return filled
}
