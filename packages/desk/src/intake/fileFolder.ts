/** A folder of files: those that wait, and where they go. */
import { createHash } from 'node:crypto'
import { createReadStream } from 'node:fs'
import { access, lstat, mkdir, readdir, rename, writeFile } from 'node:fs/promises'
import { extname, join } from 'node:path'
import { pipeline } from 'node:stream/promises'
import type { InFolder, Outcome, Waiting } from '../ports/folders.ts'
import { watchFolder } from './watchFolder.ts'

/** Names that programs give to what they are still writing, and hidden files. */
const unfinished = /^\.|\.(part|tmp|crdownload|filepart|swp)$|~$/i

export async function openFileFolder(folder: string, settleMs: number): Promise<InFolder> {
  for (const name of ['taken', 'refused']) await mkdir(join(folder, name), { recursive: true })
  return {
    waiting: () => waitingIn(folder, settleMs),
    settle: (waiting, outcome, report) => settleIn(folder, waiting, outcome, report),
    watch: (onChange, everyMs) => watchFolder(folder, onChange, everyMs),
  }
}

async function* waitingIn(folder: string, settleMs: number): AsyncGenerator<Waiting> {
  const names = (await readdir(folder)).filter((name) => !unfinished.test(name)).sort()
  for (const name of names) {
    const path = join(folder, name)
    const stat = await lstat(path).catch(() => null)
    // Gone meanwhile, a folder, a link to elsewhere, or written to just now.
    if (stat === null || !stat.isFile() || Date.now() - stat.mtimeMs < settleMs) continue
    yield { path, name, sha256: await digestOfFile(path), paths: [path], from: null }
  }
}

export async function digestOfFile(path: string): Promise<string> {
  const hash = createHash('sha256')
  await pipeline(createReadStream(path), hash)
  return hash.digest('hex')
}

/** The report first, each under a name that is free, then the file. */
export async function settleIn(folder: string, waiting: Waiting, outcome: Outcome, report: string): Promise<void> {
  const target = await freePath(join(folder, outcome), waiting.name)
  const beside = `${target}.report.txt`
  await writeFile(`${beside}.part`, report, { flush: true })
  await rename(`${beside}.part`, beside)
  await rename(waiting.path, target)
}

/** `morning.csv`, or `morning-2.csv` where that is taken. */
async function freePath(folder: string, name: string): Promise<string> {
  const ending = extname(name)
  const stem = name.slice(0, name.length - ending.length)
  for (let number = 1; ; number++) {
    const path = join(folder, number === 1 ? name : `${stem}-${number}${ending}`)
    const isFree = await access(path).then(
      () => false,
      () => true,
    )
    if (isFree) return path
  }
}
