/** A bar on the terminal's error stream while long work goes on; nothing where there is no terminal. */
import cliProgress from 'cli-progress'
import type { World } from './world.ts'

export interface Progress {
  update: (done: number, total: number) => void
  stop: () => void
}

/** @param what  a few words, such as `days judged` */
export function progressBar(world: World, what: string): Progress {
  if (!world.err.isTerminal) return { update: () => undefined, stop: () => undefined }
  const bar = new cliProgress.SingleBar(
    {
      format: `${what} {bar} {value}/{total}  {eta} s left`,
      clearOnComplete: true,
      hideCursor: true,
      stream: process.stderr,
    },
    cliProgress.Presets.rect,
  )
  let isStarted = false
  return {
    update: (done, total) => {
      if (!isStarted) bar.start(total, done)
      else bar.setTotal(total)
      isStarted = true
      bar.update(done)
    },
    stop: () => bar.stop(),
  }
}
