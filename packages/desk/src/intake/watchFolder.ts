/** Tells that something may have come into a folder: by the system's own notice where there is one, and for certain by the clock. */
import { watch } from 'chokidar'

const GATHER_MS = 250

export function watchFolder(folder: string, onChange: () => void, everyMs: number): () => Promise<void> {
  let soon: NodeJS.Timeout | null = null
  const gather = (): void => {
    soon ??= setTimeout(() => {
      soon = null
      onChange()
    }, GATHER_MS)
  }
  // Network drives give no notice: the clock looks then.
  const clock = setInterval(onChange, everyMs)
  const watcher = watch(folder, { depth: 0, ignoreInitial: true })
  watcher.on('all', gather).on('error', () => undefined)
  return async () => {
    clearInterval(clock)
    if (soon !== null) clearTimeout(soon)
    await watcher.close()
  }
}
