/** Writes a long text to a file or the terminal. A file is there whole or not at all: it is moved into its place at the end. */
import { once } from 'node:events'
import { createWriteStream } from 'node:fs'
import { rename, rm } from 'node:fs/promises'
import { Readable } from 'node:stream'
import { pipeline } from 'node:stream/promises'
import { createGzip } from 'node:zlib'
import { refused } from '../app/answer.ts'
import { CommandStopped } from './commandStopped.ts'
import type { World } from './world.ts'

/** @param file  gzip where its name ends in `.gz`; the terminal where left out */
export async function writeOut(
  world: World,
  texts: AsyncIterable<string> | Iterable<string>,
  file: string | undefined,
): Promise<void> {
  if (file === undefined) {
    for await (const text of texts) await world.out.write(text)
    return
  }
  const beside = `${file}.part`
  const stream = createWriteStream(beside)
  try {
    await once(stream, 'open')
    const source = Readable.from(texts)
    await (file.endsWith('.gz') ? pipeline(source, createGzip(), stream) : pipeline(source, stream))
    await rename(beside, file)
  } catch (error) {
    stream.destroy()
    await rm(beside, { force: true })
    if (isWritingTrouble(error)) {
      throw new CommandStopped(
        refused('FILE_NOT_WRITABLE', `${file} (${error.code})`, 'Give a place where files can be written.').problem,
      )
    }
    throw error
  }
}

function isWritingTrouble(error: unknown): error is NodeJS.ErrnoException & { code: string } {
  const codes = ['ENOENT', 'EACCES', 'EPERM', 'EROFS', 'ENOSPC', 'EISDIR', 'ENOTDIR']
  return error instanceof Error && codes.includes((error as NodeJS.ErrnoException).code ?? '')
}
