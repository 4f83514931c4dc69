/** One broken wall: where it is, which rule it breaks, and the way out. */
export interface Violation {
  /** Path from the root of the repository, with forward slashes. */
  file: string
  /** Line in the file, from 1. */
  line: number
  rule: string
  wayOut: string
}

/** `packages/web/src/x.ts:12  web may not import desk. Put the shared shape in packages/contract.` */
export function wordViolation({ file, line, rule, wayOut }: Violation): string {
  return `${file}:${line}  ${rule}. ${wayOut}`
}
