/** Processor time of all threads of a process, to the microsecond, as the Linux scheduler counts it. */
import { readdirSync, readFileSync } from 'node:fs'

/** @returns milliseconds so far of the threads that live; null where unknown (not Linux, no such process) */
export function processorMs(pid: number | undefined): number | null {
  try {
    let ns = 0
    for (const thread of readdirSync(`/proc/${pid}/task`)) {
      ns += Number(readFileSync(`/proc/${pid}/task/${thread}/schedstat`, 'utf8').split(' ')[0])
    }
    return ns / 1e6
  } catch {
    return null
  }
}
