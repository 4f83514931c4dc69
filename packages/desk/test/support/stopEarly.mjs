/** Starts a pool on a thread's program and stops it while it is starting, again and again: `FILE TIMES EXEC_ARGV…`. */
import { Piscina } from 'piscina'

const [filename, times, ...execArgv] = process.argv.slice(2)
for (let at = 0; at < Number(times); at++) {
  const pool = new Piscina({ filename, name: 'workOn', execArgv, minThreads: 2, maxThreads: 2 })
  pool.on('error', () => undefined)
  await new Promise((resolve) => setTimeout(resolve, 15 + ((at * 7) % 90)))
  await pool.destroy()
}
console.log('lived')
