/** A figure with its sign, kept on one line: "40 %" is never torn apart. */
export function unbroken(text: string): string {
  return text.replaceAll(' ', '\u00a0')
}
