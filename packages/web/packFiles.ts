/**
 * Beside each built file of text a packed one (Brotli, and gzip for browsers that ask plain http: they offer no Brotli
 * there), which the desk sends as it lies: a phone on a slow network waits for a third of the bytes.
 */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { brotliCompressSync, constants, gzipSync } from 'node:zlib'

const isText = /\.(html|js|css|svg|webmanifest)$/
/** Below this a packed file saves nothing that a phone would notice. */
const SMALLEST_BYTES = 1024

/** Whether a file of a built folder is one of those that are written here. */
export function isPacked(name: string): boolean {
  return /\.(br|gz)$/.test(name)
}

/** @param folder  built files, those in folders below it too */
export function packFiles(folder: string): void {
  for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true })) {
    if (!entry.isFile() || !isText.test(entry.name)) continue
    const path = join(entry.parentPath, entry.name)
    const content = readFileSync(path)
    if (content.length < SMALLEST_BYTES) continue
    const params = { [constants.BROTLI_PARAM_QUALITY]: constants.BROTLI_MAX_QUALITY }
    writeFileSync(`${path}.br`, brotliCompressSync(content, { params }))
    writeFileSync(`${path}.gz`, gzipSync(content, { level: constants.Z_BEST_COMPRESSION }))
  }
}
