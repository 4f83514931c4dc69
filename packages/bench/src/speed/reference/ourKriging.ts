/** The kriging of kriging.R by our own kernel, in a process of its own. Words: POINTS.csv (x,y,root) OUT.csv. */
import { readFileSync, writeFileSync } from 'node:fs'
import { ordinaryKriging } from '@gaugewright/science'

const [from, to] = process.argv.slice(2)
const rows = readFileSync(from!, 'utf8').trimEnd().split('\n').slice(1)
const cells = rows.map((row) => row.split(',').map((cell) => (cell === '' ? Number.NaN : Number(cell))))
const reported = cells.filter((row) => !Number.isNaN(row[2]!))
const column = (from: number[][], index: number, moved: number): Float64Array =>
  Float64Array.from(from, (row) => row[index]! + moved)
const points = { xM: column(reported, 0, 0), yM: column(reported, 1, 0), amountMm: column(reported, 2, 0) }
const places = { xM: column(cells, 0, 500), yM: column(cells, 1, 500) }
const variogram = {
  kind: 'exponential',
  nuggetMm2: 0.3,
  partialSillMm2: 2,
  // gstat's range is the length of the exponential; ours is where 95 % of the sill is reached.
  practicalRangeM: 60_000 * -Math.log(0.05),
} as const
const startedMs = performance.now()
const processor = process.cpuUsage()
const answer = ordinaryKriging(points, places, variogram, { nearest: 16 })
const { user, system } = process.cpuUsage(processor)
console.log('plain', (performance.now() - startedMs) / 1000, (user + system) / 1e6)
const lines = Array.from(answer.amountMm, (root, k) => `${root},${answer.varianceMm2[k]!}\n`)
writeFileSync(to!, `root,variance\n${lines.join('')}`)
