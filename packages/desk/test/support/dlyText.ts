/** A line of a `.dly` file: values by day of the month, with their measurement, quality and source flags. */
export function dlyText(
  station: string,
  month: string,
  element: string,
  values: Record<number, [value: number, flags?: string]>,
): string {
  let line = `${station}${month}${element}`
  for (let day = 1; day <= 31; day++) {
    const [value, flags = ''] = values[day] ?? [-9999]
    line += String(value).padStart(5) + flags.padEnd(3)
  }
  return `${line}\n`
}
