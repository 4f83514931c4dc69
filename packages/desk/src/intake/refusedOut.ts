/**
 * Writes refused rows to a file with the columns of the file that they came from and one more that says why, so that it
 * can be mended and imported. Written beside its place and moved there when it is whole.
 */
import { createWriteStream, type WriteStream } from 'node:fs'
import { rename, rm } from 'node:fs/promises'
import { finished } from 'node:stream/promises'
import type { FileShape, RefusedOut, RefusedRow } from '../ports/intakeFiles.ts'
import { IntakeRefusal } from '../ports/intakeRefusal.ts'
import { DLY_LINE_LENGTH } from './dlyLine.ts'
import { REASON_COLUMN } from './readingLayout.ts'

/** @param shape asked for when the first row comes */
export function openRefusedOut(path: string, shape: () => FileShape): RefusedOut {
  const part = `${path}.part`
  let stream: WriteStream | null = null
  let failure: unknown = null
  let count = 0
  const open = (): WriteStream => {
    if (stream !== null) return stream
    stream = createWriteStream(part)
    stream.on('error', (error) => {
      failure ??= error
    })
    const { header, delimiter } = shape()
    if (header !== null) stream.write(`${csvLine(withReason(header), delimiter)}\n`)
    return stream
  }
  return {
    add(row) {
      count++
      open().write(`${lineOf(row, shape())}\n`)
    },
    async finish() {
      if (stream === null) return 0
      stream.end()
      await finished(stream).catch(() => {})
      if (failure !== null) throw notWritable(path, failure)
      return count
    },
    async place() {
      if (stream === null) return
      await rename(part, path).catch((error: unknown) => {
        throw notWritable(path, error)
      })
    },
    async drop() {
      if (stream === null) return
      stream.end()
      await finished(stream).catch(() => {})
      await rm(part, { force: true })
    },
  }
}

function notWritable(path: string, error: unknown): IntakeRefusal {
  return new IntakeRefusal(
    'FILE_NOT_WRITABLE',
    `The refused rows cannot be written to "${path}" (${(error as Error).message}).`,
    'Name another place with --refused-file.',
  )
}

function lineOf(row: RefusedRow, { header, delimiter }: FileShape): string {
  // SHEF: the reason becomes a comment, and the line can be mended where it stands.
  if (header === null && delimiter === ':') return `${row.fields[0] ?? ''} :${row.reason.replaceAll(':', ';')}`
  if (header === null) return `${(row.fields[0] ?? '').padEnd(DLY_LINE_LENGTH)} ${row.reason}`
  const fields = withReason(header).map((name, index) =>
    name === REASON_COLUMN ? row.reason : (row.fields[index] ?? ''),
  )
  // Fields beyond the header are what the row was refused for: they are kept, at the end.
  return csvLine([...fields, ...row.fields.slice(header.length)], delimiter)
}

/** A file of refused rows that is given back has the column already. */
function withReason(header: readonly string[]): string[] {
  return header.includes(REASON_COLUMN) ? [...header] : [...header, REASON_COLUMN]
}

function csvLine(fields: readonly string[], delimiter: string): string {
  return fields
    .map((field) => (needsQuotes(field, delimiter) ? `"${field.replaceAll('"', '""')}"` : field))
    .join(delimiter)
}

function needsQuotes(field: string, delimiter: string): boolean {
  return field.includes(delimiter) || /["\r\n]/.test(field)
}
