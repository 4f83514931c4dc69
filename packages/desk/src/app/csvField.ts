/** One field of a CSV line (RFC 4180): quoted where it must be; text that a spreadsheet would run as a formula is kept text. */
export function csvField(text: string): string {
  const isFormula = /^[=+@\t\r]/.test(text) || /^-[^\d.,]/.test(text)
  const safe = isFormula ? `'${text}` : text
  return /[",\n\r]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe
}
