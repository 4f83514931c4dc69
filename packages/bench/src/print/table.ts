/** Plain text tables: words to the left, figures to the right, two blanks between columns. */
export function table(headings: readonly string[], rows: readonly (readonly string[])[]): string {
  const widths = headings.map((heading, c) => Math.max(heading.length, ...rows.map((row) => (row[c] ?? '').length)))
  const isFigure = headings.map((_, c) =>
    rows.every((row) => /^[-+]?[\d.]*\s?[%x]?$|^-$/.test(row[c] ?? '') || row[c] === 'NaN'),
  )
  const line = (cells: readonly string[]): string =>
    cells
      .map((cell, c) => (isFigure[c] ? cell.padStart(widths[c]!) : cell.padEnd(widths[c]!)))
      .join('  ')
      .trimEnd()
  return [line(headings), widths.map((width) => '-'.repeat(width)).join('  '), ...rows.map(line)].join('\n')
}

export function figure(value: number | undefined, decimals = 3): string {
  return value !== undefined && Number.isFinite(value) ? value.toFixed(decimals) : '-'
}

export function percent(value: number | undefined): string {
  return value !== undefined && Number.isFinite(value) ? `${(100 * value).toFixed(1)} %` : '-'
}
