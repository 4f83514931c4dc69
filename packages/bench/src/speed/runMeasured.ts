/** Runs a program to its end and says how long it took and how much memory it held at most. */
import { spawn } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { lastWords } from '../ours/lastWords.ts'
import { heldTo } from './heldTo.ts'

export interface MeasuredRun {
  seconds: number
  /** Largest resident size of the process in MB, from the kernel's own high-water mark; null where there is none. */
  peakMb: number | null
  /** Processor time of all its threads so far as last seen, which a busy machine does not stretch; null where unknown. */
  cpuSeconds: number | null
  /** Null when it ended well, else its last words. */
  failure: string | null
  stdout: string
}

/** @param cores  when given and `taskset` is there, the program is held to that many cores */
export function runMeasured(program: string, words: readonly string[], cores?: number): Promise<MeasuredRun> {
  const [file, ...rest] = [...heldTo(cores), program, ...words]
  const started = performance.now()
  return new Promise((resolve) => {
    const child = spawn(file!, rest, { stdio: ['ignore', 'pipe', 'pipe'] })
    let peakMb: number | null = null
    let cpuSeconds: number | null = null
    let stdout = ''
    let errors = ''
    child.stdout.on('data', (text) => {
      stdout += text
    })
    child.stderr.on('data', (text) => {
      errors = (errors + text).slice(-4000)
    })
    const look = setInterval(() => {
      peakMb = highWaterMb(child.pid) ?? peakMb
      cpuSeconds = processorSeconds(child.pid) ?? cpuSeconds
    }, 20)
    const end = (failure: string | null): void => {
      clearInterval(look)
      resolve({ seconds: (performance.now() - started) / 1000, peakMb, cpuSeconds, failure, stdout })
    }
    child.on('error', (error) => end(error.message))
    child.on('close', (code) => end(code === 0 ? null : (lastWords(errors) ?? `it ended with ${code}`)))
  })
}

function highWaterMb(pid: number | undefined): number | null {
  try {
    const kb = /VmHWM:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))
    return kb === null ? null : Number(kb[1]) / 1024
  } catch {
    return null // no such process any more, or not Linux
  }
}

/** Kernel ticks are hundredths of a second on every Linux that Node runs on. */
export function processorSeconds(pid: number | undefined): number | null {
  try {
    const fields = readFileSync(`/proc/${pid}/stat`, 'utf8')
      .replace(/^.*\) /, '')
      .split(' ')
    return (Number(fields[11]) + Number(fields[12])) / 100
  } catch {
    return null
  }
}
