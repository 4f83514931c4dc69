/**
 * A file for a watched folder: written under a hidden name, made durable, then renamed, so that whoever watches sees it whole
 * or not at all.
 */
import { constants } from 'node:fs'
import { access, mkdir, open, readFile, rename, rm } from 'node:fs/promises'
import { join } from 'node:path'
import type { Carried, CarryAsk } from '../ports/carriers.ts'
import type { FileContent } from '../ports/outbox.ts'

export async function carryFile(content: FileContent, ask: CarryAsk): Promise<Carried> {
  const { folder, name, text } = content
  if (name === '' || name.startsWith('.') || /[/\\\0]/.test(name)) {
    return { kind: 'failed', error: `"${name}" is no plain file name` }
  }
  const path = join(folder, name)
  const hidden = join(folder, `.${ask.messageId}.part`)
  try {
    await mkdir(folder, { recursive: true })
    const there = await textAt(path)
    // Left by an attempt that died before it was written down.
    if (there === text) return (await ask.beforeTaken()) ? { kind: 'sent', receipt: path } : { kind: 'stopped' }
    if (there !== null) return { kind: 'failed', error: `"${path}" is there already, with other content` }
    await writeDurably(hidden, text)
    if (!(await ask.beforeTaken())) {
      await rm(hidden, { force: true })
      return { kind: 'stopped' }
    }
    await rename(hidden, path)
    await syncFolder(folder)
    return { kind: 'sent', receipt: path }
  } catch (error) {
    await rm(hidden, { force: true }).catch(() => undefined)
    return { kind: 'again', error: (error as Error).message.replace(/\s+/g, ' ').slice(0, 300) }
  }
}

async function textAt(path: string): Promise<string | null> {
  try {
    await access(path, constants.F_OK)
  } catch {
    return null
  }
  return await readFile(path, 'utf8')
}

async function writeDurably(path: string, text: string): Promise<void> {
  const file = await open(path, 'w', 0o644)
  try {
    await file.writeFile(text, 'utf8')
    await file.sync()
  } finally {
    await file.close()
  }
}

/** Not every system lets a folder be opened. */
async function syncFolder(folder: string): Promise<void> {
  const handle = await open(folder, 'r').catch(() => null)
  await handle?.sync().catch(() => undefined)
  await handle?.close()
}
