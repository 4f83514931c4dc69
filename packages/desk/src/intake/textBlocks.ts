/**
 * A text file as a stream of decoded blocks: plain or gzip (told by its first two bytes, not by its name), UTF-8 with or
 * without a byte-order mark, UTF-16 with one, or a named older encoding. Never holds more than a few blocks.
 */
import { createReadStream } from 'node:fs'
import { open } from 'node:fs/promises'
import { TextDecoder } from 'node:util'
import { createGunzip } from 'node:zlib'
import type { TextAsk } from '../ports/intakeFiles.ts'
import { IntakeRefusal } from '../ports/intakeRefusal.ts'
import { placeText } from './refusal.ts'

const BLOCK_BYTES = 1 << 16

/** @throws {IntakeRefusal} FILE_NOT_FOUND, FILE_UNREADABLE, FILE_EMPTY, FILE_ENCODING, FILE_GZIP_BROKEN */
export async function* textBlocks(path: string, options: TextAsk = {}): AsyncGenerator<string> {
  const { bytesTotal, isGzip } = await probe(path)
  const file = createReadStream(path, { highWaterMark: BLOCK_BYTES })
  let bytesRead = 0
  file.on('data', (chunk) => {
    bytesRead += chunk.length
  })
  const source = isGzip ? file.pipe(createGunzip({ chunkSize: BLOCK_BYTES })) : file
  file.on('error', (error) => {
    if (source !== file) source.destroy(error)
  })
  let decoder: TextDecoder | null = null
  let isBlank = true
  try {
    for await (const bytes of source as AsyncIterable<Buffer>) {
      decoder ??= decoderFor(path, bytes, options.encoding)
      const text = decode(path, decoder, bytes)
      if (text === '') continue
      isBlank = false
      yield text
      options.onProgress?.(bytesRead, bytesTotal)
    }
  } catch (error) {
    if (error instanceof IntakeRefusal) throw error
    throw readFailure(path, error, isGzip)
  } finally {
    file.destroy()
  }
  const rest = decoder === null ? '' : decode(path, decoder, null)
  if (rest !== '') yield rest
  else if (isBlank)
    throw new IntakeRefusal(
      'FILE_EMPTY',
      `${placeText({ path })} is empty.`,
      'Give a file with a header line and rows.',
    )
}

/** True where the name or the content says that the file can be opened as text blocks; used before a stream is begun. */
async function probe(path: string): Promise<{ bytesTotal: number; isGzip: boolean }> {
  try {
    const handle = await open(path, 'r')
    try {
      const stat = await handle.stat()
      if (stat.isDirectory()) {
        throw new IntakeRefusal('FILE_UNREADABLE', `"${path}" is a folder.`, 'Name the file itself.')
      }
      // A pipe cannot be read twice: it is taken as plain text.
      if (!stat.isFile()) return { bytesTotal: 0, isGzip: false }
      const { buffer, bytesRead } = await handle.read(Buffer.alloc(2), 0, 2, 0)
      return { bytesTotal: stat.size, isGzip: bytesRead === 2 && buffer[0] === 0x1f && buffer[1] === 0x8b }
    } finally {
      await handle.close()
    }
  } catch (error) {
    if (error instanceof IntakeRefusal) throw error
    throw readFailure(path, error, false)
  }
}

function decoderFor(path: string, bytes: Buffer, encoding: string | undefined): TextDecoder {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return new TextDecoder('utf-16le', { fatal: true })
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return new TextDecoder('utf-16be', { fatal: true })
  try {
    return new TextDecoder(encoding ?? 'utf-8', { fatal: true })
  } catch {
    throw new IntakeRefusal(
      'FILE_ENCODING',
      `${placeText({ path })}: "${encoding}" is not an encoding that is known here.`,
      'Use for example --encoding utf-8, windows-1252 or iso-8859-2.',
    )
  }
}

function decode(path: string, decoder: TextDecoder, bytes: Buffer | null): string {
  try {
    return bytes === null ? decoder.decode() : decoder.decode(bytes, { stream: true })
  } catch {
    throw new IntakeRefusal(
      'FILE_ENCODING',
      `${placeText({ path })} is not ${decoder.encoding.toUpperCase()} text.`,
      'Save it as UTF-8, or name its encoding, for example --encoding windows-1252.',
    )
  }
}

function readFailure(path: string, error: unknown, isGzip: boolean): IntakeRefusal {
  const { code, message } = error as NodeJS.ErrnoException
  if (code === 'ENOENT' || code === 'ENOTDIR') {
    return new IntakeRefusal('FILE_NOT_FOUND', `There is no file "${path}".`, 'Check the name and the folder.')
  }
  if (isGzip && (code?.startsWith('Z_') || code === 'ERR_BUFFER_TOO_LARGE')) {
    return new IntakeRefusal(
      'FILE_GZIP_BROKEN',
      `${placeText({ path })} is a damaged or cut-off gzip file (${message}).`,
      'Make or fetch it again.',
    )
  }
  return new IntakeRefusal('FILE_UNREADABLE', `"${path}" cannot be read (${message}).`, 'Check its permissions.')
}
