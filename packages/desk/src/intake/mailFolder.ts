/**
 * A Maildir: messages in `new`. What a message brings are its attachments of CSV or SHEF, and its text where that is one
 * or the other; each becomes a file of its own while it is imported.
 */
import { createHash } from 'node:crypto'
import { lstat, mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { type ParsedMail, simpleParser } from 'mailparser'
import type { InFolder, Waiting } from '../ports/folders.ts'
import { settleIn } from './fileFolder.ts'
import { shefPattern } from './shefRows.ts'
import { watchFolder } from './watchFolder.ts'

const LARGEST_MAIL_BYTES = 32 * 1024 * 1024
const attachmentNames = /\.(csv|csv\.gz|txt|shef|shf)$/i
/** The first line of a table of readings. */
const tableStart =
  /^\s*(?:[^\n]*\b(?:gauge|id)\b[^\n]*\b(?:day|date)\b|[^\n]*\b(?:day|date)\b[^\n]*\b(?:gauge|id)\b)[^\n]*\n/i

export async function openMailFolder(folder: string): Promise<InFolder> {
  for (const name of ['new', 'cur', 'tmp', 'taken', 'refused']) await mkdir(join(folder, name), { recursive: true })
  return {
    waiting: () => waitingMails(folder),
    settle: (waiting, outcome, report) => settleIn(folder, waiting, outcome, report),
    watch: (onChange, everyMs) => watchFolder(join(folder, 'new'), onChange, everyMs),
  }
}

async function* waitingMails(folder: string): AsyncGenerator<Waiting> {
  const inbox = join(folder, 'new')
  for (const name of (await readdir(inbox)).filter((one) => !one.startsWith('.')).sort()) {
    const path = join(inbox, name)
    const stat = await lstat(path).catch(() => null)
    if (stat === null || !stat.isFile()) continue
    // A mail that is too large brings nothing that is looked at: it is refused as one without readings.
    const mail = stat.size > LARGEST_MAIL_BYTES ? null : await simpleParser(await readFile(path)).catch(() => null)
    const parts = mail === null ? [] : partsOf(mail)
    const work = await mkdtemp(join(tmpdir(), 'gaugewright-mail-'))
    try {
      const paths: string[] = []
      const hash = createHash('sha256')
      for (const [index, part] of parts.entries()) {
        const partPath = join(work, `${index + 1}-${part.name}`)
        await writeFile(partPath, part.content)
        hash.update(part.content)
        paths.push(partPath)
      }
      // A message without readings is told apart by itself.
      if (parts.length === 0) hash.update(name)
      yield { path, name, sha256: hash.digest('hex'), paths, from: fromOf(mail) }
    } finally {
      await rm(work, { recursive: true, force: true })
    }
  }
}

function partsOf(mail: ParsedMail): { name: string; content: Uint8Array }[] {
  const attached = mail.attachments
    .filter(({ filename }) => attachmentNames.test(filename ?? ''))
    .map(({ filename, content }) => ({ name: safeName(filename ?? ''), content: new Uint8Array(content) }))
  const text = mail.text ?? ''
  const isShef = shefPattern.test(text)
  if (!isShef && !tableStart.test(text)) return attached
  const body = isShef ? withoutSignature(text.slice(text.search(shefPattern))) : withoutSignature(text.trimStart())
  return [{ name: isShef ? 'text.shef' : 'text.csv', content: new TextEncoder().encode(body) }, ...attached]
}

/** What stands behind the line `-- ` is the sender's signature (RFC 3676, 4.3). */
function withoutSignature(text: string): string {
  const lines = text.split(/\r?\n/)
  const end = lines.findIndex((line) => line === '-- ' || line === '--')
  return `${lines
    .slice(0, end < 0 ? lines.length : end)
    .join('\n')
    .trimEnd()}\n`
}

/** Exactly one address: of a mail from several, or from none, nobody is known. */
function fromOf(mail: ParsedMail | null): string {
  const addresses = mail?.from?.value ?? []
  return addresses.length === 1 ? (addresses[0]?.address ?? '').toLowerCase() : ''
}

function safeName(name: string): string {
  return name.replaceAll(/[^A-Za-z0-9._-]/g, '_').slice(-80)
}
