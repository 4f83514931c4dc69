/** Files for a test in a folder of their own, gone afterwards. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { gzipSync } from 'node:zlib'
import { afterAll } from 'vitest'

export function tempFiles(): { folder: string; write: (name: string, content: string | Uint8Array) => string } {
  const folder = mkdtempSync(join(tmpdir(), 'gaugewright-test-'))
  afterAll(() => rmSync(folder, { recursive: true, force: true }))
  return {
    folder,
    write(name, content) {
      const path = join(folder, name)
      writeFileSync(path, name.endsWith('.gz') ? gzipSync(content) : content)
      return path
    },
  }
}
