/** A desk with three invented gauges for the observer's urgent form, that can be stopped and started again at its address. */
import { type ChildProcess, spawn } from 'node:child_process'
import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { runGaugewright } from './runGaugewright.ts'
import { freePort } from './startDesk.ts'

export interface UrgentDesk {
  url: string
  start: () => Promise<void>
  stop: () => Promise<void>
  remove: () => Promise<void>
}

const program = fileURLToPath(new URL('../../../desk/bin/gaugewright.js', import.meta.url))
const source = fileURLToPath(new URL('../../../desk/src/main.ts', import.meta.url))
const start = process.env.GAUGEWRIGHT_E2E_SOURCE ? ['--conditions=source', '--import', 'tsx', source] : [program]
const gauges = `gauge,name,lat,lon,elev_m,observer
AB3,Larkrise Mill,45.10,7.20,300,A. Observer
AB4,Upper Fold,45.14,7.26,420,B. Observer
AB5,Nobody Here,45.18,7.31,510,
`

export async function urgentDesk(unit: 'in' | 'mm' = 'in'): Promise<UrgentDesk> {
  const folder = await mkdtemp(join(tmpdir(), 'gaugewright-urgent-'))
  const db = join(folder, 'ledger.db')
  await writeFile(join(folder, 'gauges.csv'), gauges)
  await runGaugewright(['import', join(folder, 'gauges.csv'), '--db', db, '--unit', unit, '--time-zone', 'UTC'])
  const port = await freePort()
  const url = `http://127.0.0.1:${port}`
  let desk: ChildProcess | null = null
  const stop = async () => {
    const running = desk
    desk = null
    if (running === null) return
    const ended = new Promise((resolve) => running.once('exit', resolve))
    running.kill('SIGTERM')
    const timer = setTimeout(() => running.kill('SIGKILL'), 5000)
    await ended
    clearTimeout(timer)
  }
  return {
    url,
    start: async () => {
      let said = ''
      desk = spawn(process.execPath, [...start, 'serve', '--db', db, '--port', String(port), '--no-open'], {
        stdio: ['ignore', 'pipe', 'pipe'],
      })
      for (const stream of [desk.stdout, desk.stderr])
        stream?.on('data', (part) => {
          said += String(part)
        })
      for (const until = Date.now() + 60_000; Date.now() < until; ) {
        if (desk.exitCode !== null) break
        if (
          await fetch(`${url}/api/urgent`).then(
            ({ ok }) => ok,
            () => false,
          )
        )
          return
        await new Promise((resolve) => setTimeout(resolve, 150))
      }
      throw new Error(`the desk did not start: ${said.slice(-2000)}`)
    },
    stop,
    remove: async () => {
      await stop()
      await rm(folder, { recursive: true, force: true })
    },
  }
}
