/** Tables for documents: every cell as it is, columns of figures set to the right. */

/** @param rightFrom  the first column that holds figures */
export function markdownTable(
  headings: readonly string[],
  rows: readonly (readonly string[])[],
  rightFrom = 1,
): string {
  const line = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`
  const rule = headings.map((_, column) => (column >= rightFrom ? '---:' : '---'))
  return [line(headings), line(rule), ...rows.map(line)].join('\n')
}
