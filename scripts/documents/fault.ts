/** Something in the documents that is not so. */
export interface Fault {
  /** From the root of the repository. */
  file: string
  /** From 1. */
  line: number
  says: string
}

export function wordFault({ file, line, says }: Fault): string {
  return `${file}:${line}  ${says}`
}
