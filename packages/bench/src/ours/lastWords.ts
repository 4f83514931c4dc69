/** The line of a program's error output that says what went wrong: its last, but for stack frames and the version of Node. */
export function lastWords(errors: string): string | null {
  const lines = errors
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '' && !line.startsWith('at ') && !/^(Node\.js v|[{}^~]+$|code: |url: )/.test(line))
  const named = lines.filter((line) => /^(\w*Error\b|[A-Z]+_[A-Z_]+ )/.test(line))
  return (named.at(-1) ?? lines.at(-1) ?? null)?.slice(0, 300) ?? null
}
